import type { Controls } from './controls.ts';

/** One thing that happened, with the tick on which it did. Extra numbers have the unit in their name. */
export interface DiveEvent {
  readonly tick: number;
  readonly kind: EventKind;
  readonly speedMps?: number;
  readonly massKg?: number;
  readonly piece?: number;
}

/** What can happen. `…-end` closes a condition that lasts. */
export type EventKind =
  | 'head-out'
  | 'head-under'
  | 'bottom-touched'
  | 'ledge-touched'
  | 'lifted-off'
  | 'lead-released'
  | 'lead-taken-off'
  | 'lead-put-on'
  | 'lung-overpressure'
  | 'lung-overpressure-critical'
  | 'lung-overpressure-end'
  | 'lung-squeeze'
  | 'lung-squeeze-end'
  | 'suit-squeeze'
  | 'suit-squeeze-end'
  | 'relief-open'
  | 'relief-shut'
  | 'regulator-empty'
  | 'inflator-dead'
  | 'loop-below-minimum'
  | 'loop-filled'
  | 'gas-lost'
  | 'nudged-up'
  | 'nudged-down'
  | 'down-current'
  | 'up-current'
  | 'current-end';

/** Bits of the state's flags: conditions that last. */
export const FLAG = {
  headOut: 1,
  overpressure: 2,
  critical: 4,
  lungSqueeze: 8,
  suitSqueeze: 16,
  relief: 32,
  regulatorEmpty: 64,
  inflatorDead: 128,
  loopLow: 256,
} as const;

/** Over-pressure of held breath that is warned of, pascals. @source physics notes: teaching threshold, practice */
export const LUNG_WARN_PA = 5000;
/** Over-pressure of held breath that is critical, pascals: about 65 mmHg. @source Meier et al. 1979, dogs, read */
export const LUNG_CRITICAL_PA = 9000;
/** Squeeze of lungs or suit that is spoken of, pascals: half a metre of water. Practice. */
export const SQUEEZE_PA = 5000;

const TURNS: readonly (readonly [flag: number, on: EventKind, off: EventKind | null])[] = [
  [FLAG.headOut, 'head-out', 'head-under'],
  [FLAG.overpressure, 'lung-overpressure', 'lung-overpressure-end'],
  [FLAG.critical, 'lung-overpressure-critical', null],
  [FLAG.lungSqueeze, 'lung-squeeze', 'lung-squeeze-end'],
  [FLAG.suitSqueeze, 'suit-squeeze', 'suit-squeeze-end'],
  [FLAG.relief, 'relief-open', 'relief-shut'],
  [FLAG.regulatorEmpty, 'regulator-empty', null],
  [FLAG.inflatorDead, 'inflator-dead', null],
  [FLAG.loopLow, 'loop-below-minimum', 'loop-filled'],
];

/** Adds the events of flags that changed on a tick. */
export function pushTurns(events: DiveEvent[], tick: number, before: number, after: number, speedMps: number): void {
  for (const [flag, on, off] of TURNS) {
    if (((before ^ after) & flag) === 0) continue;
    const kind = (after & flag) !== 0 ? on : off;
    if (kind) events.push(flag === FLAG.headOut ? { tick, kind, speedMps } : { tick, kind });
  }
}

/** Kinds that happen at the beginning of a tick; all else happens at its end. */
const AT_BEGINNING: ReadonlySet<EventKind> = new Set([
  'lead-released',
  'lead-taken-off',
  'lead-put-on',
  'gas-lost',
  'nudged-up',
  'nudged-down',
  'down-current',
  'up-current',
  'current-end',
]);

/** Whether an event had happened by a tick, what happens at the beginning of that very tick left out. */
export function hadHappened({ tick, kind }: DiveEvent, by: number): boolean {
  return tick < by || (tick === by && !AT_BEGINNING.has(kind));
}

/** Adds what a change of controls tells that no state knows of: that something bumps, that water begins or ceases to move. */
export function pushDisturbances(events: DiveEvent[], tick: number, before: Controls, after: Controls): void {
  const nudge = wayOf(after.nudgeUpN);
  if (nudge !== 0 && nudge !== wayOf(before.nudgeUpN))
    events.push({ tick, kind: nudge > 0 ? 'nudged-up' : 'nudged-down' });
  const water = wayOf(after.waterDownMmps);
  if (water === wayOf(before.waterDownMmps)) return;
  events.push({ tick, kind: water > 0 ? 'down-current' : water < 0 ? 'up-current' : 'current-end' });
}

function wayOf(value: number): 1 | 0 | -1 {
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}
