/** What can go wrong with what a browser keeps. */
export type StoreFault = 'refused' | 'full' | 'newer' | 'busy' | 'damaged' | 'gone' | 'broken';

const WORDS: Readonly<Record<StoreFault, string>> = {
  refused: 'This browser keeps nothing for us: a private window, or storage that is switched off.',
  full: 'This browser has no room left for kept dives.',
  newer: 'A newer version of this program keeps its dives in this browser, and this version leaves them alone.',
  busy: 'The kept dives of this browser did not open in time; another tab or window may hold them.',
  damaged: 'This kept dive is damaged and cannot be opened.',
  gone: 'This dive is no longer kept: it was removed, here or in another tab.',
  broken: 'The kept dives of this browser cannot be read.',
};

/** Something that could not be kept, read or removed; its message is a plain sentence. Dives in memory are never touched by it. */
export class StoreProblem extends Error {
  readonly fault: StoreFault;

  constructor(fault: StoreFault, cause?: unknown) {
    super(WORDS[fault], { cause });
    this.name = 'StoreProblem';
    this.fault = fault;
  }
}

/** What browsers call it, and what it is. */
const FAULT_OF: Readonly<Record<string, StoreFault>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer',
  SecurityError: 'refused',
  NotAllowedError: 'refused',
  // Where storage is switched off the name is missing, or asking for it is refused.
  ReferenceError: 'refused',
  TypeError: 'refused',
};

/** Any failure of the database as one of ours. */
export function storeProblem(problem: unknown): StoreProblem {
  if (problem instanceof StoreProblem) return problem;
  const name = problem instanceof Error || problem instanceof DOMException ? problem.name : '';
  return new StoreProblem(FAULT_OF[name] ?? 'broken', problem);
}
