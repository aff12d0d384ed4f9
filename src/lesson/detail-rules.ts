import type { GivenEvent, GivenGoal, GivenKeep } from './step-schema.ts';
import type { GivenStart } from './start-schema.ts';

/** A break of a rule that joins keys of one group; `at` is the place within it. */
export interface DetailBreak {
  readonly at: readonly (string | number)[];
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

/** Which keys a group has to have, may have, and must not have. */
export function keyRules(
  group: object,
  whose: string,
  needed: readonly string[],
  may: readonly string[],
  all: readonly string[],
): DetailBreak[] {
  const given = group as Readonly<Record<string, unknown>>;
  const known = [...needed, ...may];
  const allowed = known.length > 0 ? `with ${whose} the keys ${known.join(', ')}` : `none of these keys with ${whose}`;
  return all.flatMap((key) => {
    const there = given[key] !== undefined;
    if (there && !needed.includes(key) && !may.includes(key))
      return [{ at: [key], found: `${key} with ${whose}`, allowed, suggestion: `Delete ${key}` }];
    if (!there && needed.includes(key))
      return [{ at: [key], found: `no ${key} with ${whose}`, allowed, suggestion: `Add ${key}` }];
    return [];
  });
}

const START_KEYS = ['depthM', 'jacketL', 'offNeutralL', 'wrongByL', 'speedMpmin', 'pitchDeg'];
const GAS_KEYS = ['jacketL', 'offNeutralL', 'wrongByL'] as const;

/** Afloat the jacket decides the depth; under water its gas is given in one of three ways. */
export function startRules(start: GivenStart): DetailBreak[] {
  if (start.place === 'afloat') return keyRules(start, 'place afloat', ['jacketL'], [], START_KEYS);
  const given = GAS_KEYS.filter((key) => start[key] !== undefined);
  const broken = keyRules(start, 'place under', ['depthM'], [...GAS_KEYS, 'speedMpmin', 'pitchDeg'], START_KEYS);
  if (given.length !== 1)
    broken.push({
      at: [given[1] ?? 'jacketL'],
      found: given.length === 0 ? 'no gas for the jacket' : given.join(' and '),
      allowed: `one of ${GAS_KEYS.join(', ')}`,
      suggestion: given.length === 0 ? 'Add offNeutralL: 0 for a neutral diver' : `Keep one of them`,
    });
  return [...broken, ...(start.wrongByL ? pairRules('wrongByL', start.wrongByL) : [])];
}

/** Two numbers, the smaller first. */
export function pairRules(key: string, pair: readonly number[]): DetailBreak[] {
  const [least = 0, most = 0] = pair;
  if (least <= most) return [];
  const found = `[${least}, ${most}]`;
  return [{ at: [key], found, allowed: 'the smaller number first', suggestion: `Write [${most}, ${least}]` }];
}

/** Limits of a range, as a file gives them. */
interface GivenRange {
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

/** At least one limit, the smaller one below the other. */
export function rangeRules({ least, most }: GivenRange): DetailBreak[] {
  if (least === undefined && most === undefined)
    return [{ at: ['least'], found: 'no limit', allowed: 'least, most, or both', suggestion: 'Add least or most' }];
  if (least === undefined || most === undefined || least < most) return [];
  const found = `least ${least} with most ${most}`;
  return [{ at: ['least'], found, allowed: 'least below most', suggestion: 'Write a smaller least' }];
}

/** Conditions of a goal have what they need. */
export function goalRules(goal: GivenGoal): DetailBreak[] {
  if (goal.kind !== 'meet') return [];
  return goal.each.flatMap((one, i) => {
    const needed = one.do === 'hold' ? ['what', 'forS'] : ['what'];
    const keys = keyRules(one, `do ${one.do}`, needed, ['least', 'most', 'overS'], ['what', 'forS']);
    return [...keys, ...rangeRules(one)].map(({ at, ...rest }) => ({ at: ['each', i, ...at], ...rest }));
  });
}

const KEEP_KEYS = ['what', 'least', 'most', 'overS', 'atS', 'of', 'longestS'];
const RANGE_KEYS = ['least', 'most', 'overS'];

/** Conditions to keep have what they need. @param happens whether anything goes wrong in the step */
export function keepRules(keep: GivenKeep, happens: boolean): DetailBreak[] {
  const whose = `do ${keep.do}`;
  if (keep.do === 'presses') return keyRules(keep, whose, ['most'], ['longestS'], KEEP_KEYS);
  if (keep.do === 'lead-changes') return keyRules(keep, whose, ['most'], [], KEEP_KEYS);
  const timed = keep.do === 'before' || keep.do === 'after';
  const broken = timed
    ? keyRules(keep, whose, ['what', 'atS'], [...RANGE_KEYS, 'of'], KEEP_KEYS)
    : keyRules(keep, whose, ['what'], RANGE_KEYS, KEEP_KEYS);
  if (keep.of === 'event' && timed && !happens)
    broken.push({
      at: ['of'],
      found: 'of: event in a step without events',
      allowed: 'of: step, or events in the step',
      suggestion: 'Add events, or write of: step',
    });
  return [...broken, ...rangeRules(keep)];
}

/** What each thing that goes wrong is given, beside when. */
const EVENT_NEEDS: Readonly<Record<GivenEvent['kind'], readonly string[]>> = {
  'inflator-open': ['forS'],
  'vent-open': ['forS'],
  'vent-shut': ['forS'],
  'suit-inflator-open': ['forS'],
  'lead-lost': [],
  nudge: ['upNs'],
  current: ['downMpmin', 'forS'],
  'gas-low': ['leftBar'],
};

/** What goes wrong has what it needs, and its two times are in order. */
export function eventRules(event: GivenEvent): DetailBreak[] {
  const needed = EVENT_NEEDS[event.kind];
  const keys = keyRules(event, `kind ${event.kind}`, needed, [], ['forS', 'upNs', 'downMpmin', 'leftBar']);
  return [...keys, ...pairRules('afterS', event.afterS)];
}

interface GivenFlyer {
  readonly pilot?: string | undefined;
  readonly script?: readonly { readonly atS: number }[] | undefined;
}

/** Somebody flies: a pilot or a script, and a script goes forward in time. */
export function flyerRules({ pilot, script }: GivenFlyer): DetailBreak[] {
  const broken: DetailBreak[] = [];
  if ((pilot === undefined) === (script === undefined))
    broken.push({
      at: [script ? 'script' : 'pilot'],
      found: script ? 'a pilot and a script' : 'nobody who flies',
      allowed: 'pilot, or script',
      suggestion: script ? 'Delete one of them' : 'Add pilot: steady, for example',
    });
  script?.forEach(({ atS }, i) => {
    const before = script[i - 1];
    if (before && atS <= before.atS)
      broken.push({
        at: ['script', i, 'atS'],
        found: `${atS} after ${before.atS}`,
        allowed: 'changes in order of time, one for each moment',
        suggestion: 'Put the change where its time belongs, or join the two',
      });
  });
  return broken;
}
