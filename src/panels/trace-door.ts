// What the traces need of the panels: fetched when they are first wanted.
import './trace-panel.ts';

export { traceKinds } from './trace-kinds.ts';
