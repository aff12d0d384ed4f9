// What kept dives need of the panels: fetched after the first dive is there.
import './kept-list.ts';
import './kept-note.ts';

export { minutesAndSeconds } from './kept-words.ts';
