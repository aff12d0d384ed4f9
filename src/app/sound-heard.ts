import type { Rig } from '../diver/index.ts';
import { FLAG, TICKS_PER_S, type Controls, type DiveState, type Moment } from '../dive/index.ts';
import { STILL_MPS } from '../panels/index.ts';

/** What of a moment is listened to. */
export interface Listened {
  readonly state: Pick<DiveState, 'tick' | 'speedMps' | 'lungM3' | 'lungMol' | 'letInM3' | 'letOutM3' | 'flags'>;
  readonly changes: Moment['changes'];
}

/** Gas that passes somewhere, by the name of what passes it. */
export type GasName =
  'inflator' | 'suit inflator' | 'by mouth' | 'loop' | 'vent' | 'suit vent' | 'suit valve' | 'relief valve' | 'nose';

/** What a dive sounds like now; rates in litres a second at the diver's depth. */
export interface Sounds {
  /** Into the lungs positive; 0 while no air moves. */
  readonly breathLps: number;
  readonly gas: readonly { readonly name: GasName; readonly way: 'in' | 'out'; readonly lps: number }[];
  /** Down positive. */
  readonly speedMps: number;
  /** Pitch of the tone; null while the diver is still. */
  readonly toneHz: number | null;
}

/** Less than this is not heard, litres a second. Practice. */
const BREATH_LPS = 0.05;
const GAS_LPS = 0.01;
/** Two moments farther apart are no stretch of a dive that runs, ticks. */
const FAR_TICKS = TICKS_PER_S / 2;
/** The tone of nobody's speed, hertz; an octave for each so many m/s; and at most so many octaves. Practice. */
const MIDDLE_HZ = 440;
const OCTAVE_MPS = 18 / 60;
const MOST_OCTAVES = 1;

/** Keeps of a moment what is listened to: a dive's own state is changed in place. */
export function listened({ state, changes }: Moment): Listened {
  const { tick, speedMps, lungM3, lungMol, letInM3, letOutM3, flags } = state;
  return { state: { tick, speedMps, lungM3, lungMol, letInM3, letOutM3, flags }, changes };
}

/** What is heard between two moments of a dive that runs; null where it does not, goes back or leaps. */
export function soundsBetween(rig: Rig, before: Listened, after: Listened): Sounds | null {
  const ticks = after.state.tick - before.state.tick;
  if (!(ticks > 0 && ticks <= FAR_TICKS)) return null;
  const seconds = ticks / TICKS_PER_S;
  const inLps = ((after.state.letInM3 - before.state.letInM3) * 1e3) / seconds;
  const outLps = ((after.state.letOutM3 - before.state.letOutM3) * 1e3) / seconds;
  const { speedMps } = after.state;
  const hands = handsBetween(after.changes, before.state.tick, after.state.tick);
  const blown = hands.some(({ oral }) => oral === 1);
  return {
    breathLps: rig.lungs.open ? breathLps(before, after, seconds, blown ? inLps : 0) : 0,
    gas: [
      ...(inLps > GAS_LPS ? letIn(hands).map((name) => ({ name, way: 'in' as const, lps: inLps })) : []),
      ...(outLps > GAS_LPS
        ? letOut(rig, hands, before.state.flags | after.state.flags).map((name) => ({
            name,
            way: 'out' as const,
            lps: outLps,
          }))
        : []),
    ],
    speedMps,
    toneHz: toneHz(speedMps),
  };
}

/** Higher the faster the diver rises, lower the faster he sinks, null while he is still: as the word beside the depth. */
export function toneHz(speedMps: number): number | null {
  if (!(Math.abs(speedMps) >= STILL_MPS)) return null;
  const octaves = Math.min(Math.max(-speedMps / OCTAVE_MPS, -MOST_OCTAVES), MOST_OCTAVES);
  return MIDDLE_HZ * 2 ** octaves;
}

/** What the hands did between two ticks; a press may be shorter than a frame. */
function handsBetween(changes: Moment['changes'], fromTick: number, toTick: number): Controls[] {
  const hands: Controls[] = [];
  for (let i = changes.length - 1; i >= 0; i--) {
    const { tick, controls } = changes[i]!;
    if (tick < toTick) hands.push(controls);
    if (tick <= fromTick) break;
  }
  return hands;
}

/** What is blown into the jacket by mouth leaves the lungs, and is no breath. */
function breathLps(before: Listened, after: Listened, seconds: number, blownLps: number): number {
  const { lungM3, lungMol } = after.state;
  const moved = (((lungMol - before.state.lungMol) / lungMol) * lungM3 * 1e3) / seconds;
  const breath = moved + blownLps;
  return Math.abs(breath) < BREATH_LPS ? 0 : breath;
}

function letIn(hands: readonly Controls[]): GasName[] {
  return named([
    ['inflator', hands.some((c) => c.jacketAdd === 1)],
    ['suit inflator', hands.some((c) => c.suitAdd === 1)],
    ['by mouth', hands.some((c) => c.oral === 1)],
    ['loop', hands.some((c) => c.diluent === 1)],
  ]);
}

/** Valves that open by themselves are what is left when no hand is on one. */
function letOut(rig: Rig, hands: readonly Controls[], flags: number): GasName[] {
  const names = named([
    ['vent', hands.some((c) => c.jacketVent !== 0)],
    ['suit vent', hands.some((c) => c.suitVent === 1)],
    ['nose', hands.some((c) => c.noseVent === 1)],
    ['relief valve', (flags & FLAG.relief) !== 0],
  ]);
  return names.length > 0 ? names : [rig.drysuit ? 'suit valve' : 'relief valve'];
}

function named(all: readonly (readonly [GasName, boolean])[]): GasName[] {
  return all.filter(([, on]) => on).map(([name]) => name);
}
