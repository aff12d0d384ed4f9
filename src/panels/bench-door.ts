import './bench-sheet.ts';
import './question-sheet.ts';

export { deepSentence, tankSentence } from './bench-words.ts';
export { SHAPES, SQUEEZE_PA, TOOL_KEYS, carriedBy, handAsk } from './bench-hands.ts';
