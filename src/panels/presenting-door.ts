// What presenting needs of the panels: fetched when a class is first taught, or before, while nothing else is to do.
import './presenter-strip.ts';
import './show-list.ts';

export { TALLY_KEYS } from './presenter-strip.ts';
