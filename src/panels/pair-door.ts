// What two divers need of the panels: fetched when a second one is asked for.
import './pair-strip.ts';

export { pairSentence } from './pair-words.ts';
