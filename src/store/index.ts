export type { Keeping } from './keeping.ts';
export { MOST_KEPT, type KeptBeside, type KeptDive, type KeptPair, type KeptSummary, type KeptWhat } from './kept.ts';
export type { KeptResult, Result, ResultMark } from './result.ts';
export { Store } from './store.ts';
export { StoreProblem, type StoreFault } from './trouble.ts';
