import { nearest } from '../diver/file.ts';
import { USUAL_ASK, USUAL_LUNGS } from '../insight/index.ts';
import { forces } from './forces.ts';
import { DEEPEST_M, LUNGS, litres } from './options.ts';
import { UsageError, type Option } from './usage.ts';

/** The shallowest that a diver can be: level at the surface, floating high, metres. */
export const SHALLOWEST_M = -0.6;

/** Upward speed that `--above rate` forbids, metres a minute. Practice. */
export const RATE_MPMIN = 18;

/** What `--above` can be. */
export const ABOVE = ['head-out', 'rate'] as const;

const { jacket, 'suit-gas': suitGas, cylinder } = forces.options;

/** A moment and what is feared in it: the options that `insight` and `map` share. */
export const MOMENT_OPTIONS: Readonly<Record<string, Option>> = {
  depth: { kind: 'number', least: SHALLOWEST_M, most: DEEPEST_M, says: 'metres', needed: true },
  speed: { kind: 'number', least: -3, most: 3, says: 'metres a second, down positive; left out: 0' },
  lungs: LUNGS,
  jacket,
  'suit-gas': suitGas,
  cylinder,
  pitch: { kind: 'number', least: -180, most: 180, says: 'whole degrees, head up positive; left out: 0, level' },
  reaction: {
    kind: 'number',
    least: 0,
    most: 60,
    says: `seconds in which nothing is done; left out: ${USUAL_ASK.reactionS}`,
  },
  floor: {
    kind: 'number',
    least: 1,
    most: DEEPEST_M,
    says: 'metres not to be passed when sinking; left out: the ground',
  },
  above: {
    kind: 'text',
    shows: 'a limit',
    says: `what must not be when rising: head-out, or rate, ${RATE_MPMIN} m/min until then; left out: head-out`,
  },
  least: lungsOption('least', USUAL_LUNGS.leastM3),
  most: lungsOption('most', USUAL_LUNGS.mostM3),
};

/**
 * One of the words that an option allows.
 * @throws {UsageError} when it is none of them, with the nearest
 */
export function oneOf<T extends string>(name: string, written: string, words: readonly T[]): T {
  const found = words.find((one) => one === written);
  if (found !== undefined) return found;
  const near = nearest(written, words);
  const hint = near === undefined ? '' : `: write ${near}`;
  throw new UsageError(`${name}: found ${JSON.stringify(written)}${hint}; allowed: ${words.join(', ')}`);
}

/** Refuses a number with a fraction where none makes sense. */
export function whole(name: string, value: number): number {
  if (Number.isInteger(value)) return value;
  throw new UsageError(`${name}: found "${value}"; allowed: a whole number`);
}

function lungsOption(which: string, usualM3: number): Option {
  const says = `litres in the lungs at the ${which} when it matters; left out: ${litres(usualM3)}`;
  return { kind: 'number', least: 0, most: 12, says };
}
