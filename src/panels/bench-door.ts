import './bench-sheet.ts';
import './question-sheet.ts';

export { deepSentence, tankSentence } from './bench-words.ts';
