import {
  TICKS_PER_ROW,
  TICKS_PER_S,
  withMishaps,
  type Controls,
  type DiveState,
  type Mishap,
  type Recording,
} from '../dive/index.ts';
import type { Rig } from '../diver/index.ts';
import { chanceOf } from '../pilot/index.ts';
import { rowsOf } from './rows.ts';

/** What can go wrong in a flown step. */
export const HAPPENINGS = [
  'inflator-open',
  'vent-open',
  'vent-shut',
  'suit-inflator-open',
  'lead-lost',
  'nudge',
  'current',
  'gas-low',
] as const;

/** Something that goes wrong in a step: so long after it began, by chance between two times. */
export type LessonEvent = { readonly afterS: readonly [number, number] } & (
  | {
      readonly kind: 'inflator-open' | 'vent-open' | 'vent-shut' | 'suit-inflator-open';
      readonly forS: number;
    }
  /** All lead that can be let go. */
  | { readonly kind: 'lead-lost' }
  | { readonly kind: 'nudge'; readonly upNs: number }
  | { readonly kind: 'current'; readonly downMpmin: number; readonly forS: number }
  | { readonly kind: 'gas-low'; readonly leftBar: number }
);

/** A step with events, and the row on which it began. */
interface Eventful {
  readonly events: readonly LessonEvent[];
  readonly fromRow: number;
}

/**
 * Row on which an event of a step begins. Chance comes from the dive itself, from depth and lungs on the step's first row: nobody
 * knows it before, and a replay and a reload give the same.
 */
export function eventRow({ events, fromRow }: Eventful, index: number, recording: Recording): number {
  const [least, most] = events[index]!.afterS;
  const chance = chanceOf(seedOf(recording.at(fromRow, 'depthM'), recording.at(fromRow, 'lungM3'), index));
  return fromRow + rowsOf(least + (most - least) * chance.uniform());
}

/** The first and the last row on which something of a step goes wrong; null where nothing does. */
export function eventSpan(
  step: Eventful,
  recording: Recording,
): { readonly first: number; readonly last: number } | null {
  if (step.events.length === 0) return null;
  const rows = step.events.map((_, i) => eventRow(step, i, recording));
  return { first: Math.min(...rows), last: Math.max(...rows) };
}

/** What becomes of what the hands want on a tick, from all that goes wrong in the steps that were begun. */
export function meddled(
  steps: readonly Eventful[],
  rig: Rig,
  recording: Recording,
  wanted: Controls,
  state: Readonly<DiveState>,
): Controls {
  const mishaps = steps.flatMap((step) =>
    step.events.flatMap((event, i) => {
      const ticks = recording.startTick + eventRow(step, i, recording) * TICKS_PER_ROW;
      return mishapsOf(event, ticks / TICKS_PER_S, rig);
    }),
  );
  return mishaps.length === 0 ? wanted : withMishaps(wanted, mishaps, state);
}

function mishapsOf(event: LessonEvent, atS: number, rig: Rig): Mishap[] {
  switch (event.kind) {
    case 'lead-lost':
      return rig.lead.flatMap(({ releasable }, i) => (releasable ? [{ kind: event.kind, atS, piece: i + 1 }] : []));
    case 'nudge':
      return [{ kind: event.kind, atS, upNs: event.upNs }];
    case 'current':
      return [{ kind: event.kind, atS, downMps: event.downMpmin / 60, forS: event.forS }];
    case 'gas-low':
      return [{ kind: event.kind, atS, leftBar: event.leftBar }];
    default:
      return [{ kind: event.kind, atS, forS: event.forS }];
  }
}

/** All lead of a rig that can be let go, as a mask. */
export function releasableMask(rig: Rig): number {
  return rig.lead.reduce((mask, piece, i) => (piece.releasable ? mask | (1 << i) : mask), 0);
}

/** A seed from the bits of two numbers: 32-bit FNV-1a. @source Fowler, Noll & Vo, public domain; recalled */
function seedOf(...values: readonly number[]): number {
  const view = new DataView(new ArrayBuffer(8));
  let hash = 0x811c9dc5;
  for (const value of values) {
    view.setFloat64(0, value);
    for (let i = 0; i < 8; i++) hash = Math.imul(hash ^ view.getUint8(i), 0x01000193);
  }
  return hash >>> 0;
}
