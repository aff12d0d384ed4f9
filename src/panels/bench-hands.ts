import { PUTTY_BALL, PUTTY_BOAT, PUTTY_TRAY, type BenchAsk, type PuttyShape } from '../bench/index.ts';
import type { BenchView } from './bench-view.ts';

/*
 * What one press asks of the bench, by button or by key: both go by the same steps, so that whatever a lesson asks for can be
 * set by either.
 */

/** Shapes of the putty, each with a key of its own by its usual place. */
export const SHAPES: readonly { readonly words: string; readonly shape: PuttyShape; readonly key: string }[] = [
  { words: 'ball', shape: PUTTY_BALL, key: 'Digit1' },
  { words: 'tray', shape: PUTTY_TRAY, key: 'Digit2' },
  { words: 'boat', shape: PUTTY_BOAT, key: 'Digit3' },
];

/** Tools that are put up and taken away, each with a key of its own by its usual place. */
export const TOOL_KEYS = { balance: 'Digit4', spout: 'Digit5' } as const;

/** A press of a button carries so far, and moves the hook, metres; how hard it squeezes, pascals. */
export const CARRY_M = 0.03;
export const HOOK_M = 0.02;
export const SQUEEZE_PA = 500;
/** A key carries by this, or by five of it, metres; in the deep tank by these. */
const KEY_M = 0.01;
const DEEP_KEY_M = 1;
const COARSE = 5;

export type Way = 'left' | 'right' | 'up' | 'down';
const WAYS: Readonly<Record<Way, readonly [right: number, down: number]>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** What the button asks that takes in hand and lets go. */
export function handAsk({ tank, deep }: Pick<BenchView, 'tank' | 'deep'>): BenchAsk {
  if (tank) return { do: tank.hand === null ? 'take' : 'let-go' };
  if (deep?.heldM !== null) return { do: 'let-go' };
  return { do: 'depth', depthM: backM(deep.kind) };
}

/** Where bodies of a column are taken back to, metres. */
export const backM = (kind: 'deep' | 'bottle'): number => (kind === 'deep' ? 5 : 0.1);

/** Carries what is held by one step of a key, five with shift; null where there is no such way. */
export function carriedBy(view: Pick<BenchView, 'tank' | 'deep'>, way: Way, coarse: boolean): BenchAsk | null {
  const [right, down] = WAYS[way];
  const steps = coarse ? COARSE : 1;
  if (view.tank) return { do: 'carry', byXM: right * steps * KEY_M, byYM: down * steps * KEY_M };
  return view.deep && down !== 0 ? columnBy(view.deep, down * steps) : null;
}

/** Carries bodies of a column by so many steps, to whole ones: 1 m in the deep tank, 1 cm in the flask. */
export function columnBy({ kind, heldM, bottomM, bodies }: NonNullable<BenchView['deep']>, steps: number): BenchAsk {
  const stepM = kind === 'deep' ? DEEP_KEY_M : KEY_M;
  const whole = Math.round((heldM ?? bodies[0]!.depthM) / stepM) + steps;
  return { do: 'depth', depthM: Math.min(Math.max(0, whole * stepM), bottomM) };
}
