import './bench-sheet.ts';

export { deepSentence, tankSentence } from './bench-words.ts';
