import { TICKS_PER_ROW, TICKS_PER_S, ventFor, type Controls, type DiveState, type Recording } from '../dive/index.ts';
import type { Rig } from '../diver/index.ts';
import { chanceOf } from '../pilot/index.ts';
import { rowsOf } from './rows.ts';

/** What can go wrong in a flown step. */
export const HAPPENINGS = ['inflator-open', 'vent-open', 'vent-shut', 'suit-inflator-open', 'lead-lost'] as const;
export type Happening = (typeof HAPPENINGS)[number];

/** Something that goes wrong: so long after the beginning of its step, by chance between two times, and for so long. */
export interface LessonEvent {
  readonly kind: Happening;
  readonly afterS: readonly [number, number];
  /** Lead that is lost stays lost. */
  readonly forS: number;
}

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

/** What valves and lead do on a tick, whatever the hands want. */
export function meddled(
  steps: readonly Eventful[],
  rig: Rig,
  recording: Recording,
  wanted: Controls,
  state: Readonly<DiveState>,
): Controls {
  let controls = wanted;
  for (const step of steps)
    step.events.forEach(({ kind, forS }, i) => {
      const sinceS = (state.tick - recording.startTick - eventRow(step, i, recording) * TICKS_PER_ROW) / TICKS_PER_S;
      if (sinceS >= 0 && (sinceS < forS || kind === 'lead-lost'))
        controls = { ...controls, ...does(kind, rig, state, controls) };
    });
  return controls;
}

function does(kind: Happening, rig: Rig, state: Readonly<DiveState>, { releaseMask }: Controls): Partial<Controls> {
  switch (kind) {
    case 'inflator-open':
      return { jacketAdd: 1 };
    case 'vent-open':
      return { jacketVent: ventFor(state.pitchSin) };
    case 'vent-shut':
      return { jacketVent: 0 };
    case 'suit-inflator-open':
      return { suitAdd: 1 };
    case 'lead-lost':
      return { releaseMask: releaseMask | releasableMask(rig) };
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
