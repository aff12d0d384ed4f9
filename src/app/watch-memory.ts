import type { Answer, Demonstrator } from '../lesson/index.ts';

const WATCH = 'midwater-watch';
const HANDS = 'midwater-hands';

/** A lesson that a simulated diver flies, as it was left: he does the same again, and the class has said what it said. */
export interface LeftWatch {
  readonly id: string;
  readonly by: Demonstrator;
  /** Whether a class was asked. */
  readonly asked: boolean;
  readonly given: readonly Answer[];
  /** Ticks that were flown. */
  readonly ticks: number;
  /** What it was flown under: under another lesson or model he would do otherwise. */
  readonly under: string;
}

/** Hands that were counted, and for which question. */
export interface LeftHands {
  readonly askedId: string;
  readonly counts: readonly number[];
}

/** Keeps where a watched lesson is for as long as the tab lives; null forgets it. */
export function keepWatch(view: Window, left: LeftWatch | null): void {
  keep(view, WATCH, left);
}

/** The watched lesson that was left; null where there is none, or nothing that can be read. */
export function leftWatch(view: Window): LeftWatch | null {
  const left = found(view, WATCH) as Partial<LeftWatch> | null;
  const whole = left?.id && left.by && Array.isArray(left.given) && Number.isInteger(left.ticks);
  return whole ? (left as LeftWatch) : null;
}

/** Keeps the hands of a class for as long as the tab lives. */
export function keepHands(view: Window, left: LeftHands): void {
  keep(view, HANDS, left);
}

/** The hands that were counted last; null where there are none. */
export function leftHands(view: Window): LeftHands | null {
  const left = found(view, HANDS) as Partial<LeftHands> | null;
  return left?.askedId && Array.isArray(left.counts) ? (left as LeftHands) : null;
}

/** A browser may refuse: then a lesson begins anew after a reload, and nothing else is lost. */
function keep(view: Window, key: string, what: object | null): void {
  try {
    if (what) view.sessionStorage.setItem(key, JSON.stringify(what));
    else view.sessionStorage.removeItem(key);
  } catch {
    // Nothing is kept.
  }
}

function found(view: Window, key: string): object | null {
  try {
    return JSON.parse(view.sessionStorage.getItem(key) ?? 'null') as object | null;
  } catch {
    return null;
  }
}
