import Matter from 'matter-js';
import {
  Dive,
  Recording,
  TICKS_PER_ROW,
  advance,
  copyState,
  overwriteState,
  restingControls,
  type Controls,
  type DiveEvent,
} from '../../src/dive/index.ts';
import { DRYSUIT, FOAM, LAYERS, type TimedDiver } from './divers.ts';
import { minuteByOdex } from './flat-equations.ts';

/** One row of the benchmark: what is timed, against what, and what is demanded of the ratio. */
export interface Scenario {
  readonly name: string;
  /** Work of one round and how many units it did; the time per unit is compared. */
  readonly ours: () => number;
  readonly theirs: () => number;
  readonly most?: number;
}

/** A bare update of an engine with one body in it. */
function matterUpdates(): () => number {
  const engine = Matter.Engine.create();
  Matter.Composite.add(engine.world, Matter.Bodies.circle(0, 0, 20));
  return () => {
    for (let i = 0; i < 4000; i++) Matter.Engine.update(engine, 1000 / 60);
    return 4000;
  };
}

const MINUTE = 7200;

/**
 * Minutes of diving, from the same state each, under controls that are given for each block of so many ticks, with a row
 * recorded every twelfth tick as a dive does.
 */
function minutes({ rig, start }: TimedDiver, blockTicks: number, controls: readonly Controls[]): () => number {
  const state = copyState(start);
  const events: DiveEvent[] = [];
  return () => {
    let ticks = 0;
    for (let minute = 0; minute < 6; minute++) {
      overwriteState(state, start);
      events.length = 0;
      const recording = new Recording(rig, state.tick);
      recording.note(state);
      for (let n = 0; n < MINUTE; n += blockTicks) {
        advance(rig, state, controls[(n / blockTicks) % controls.length]!, blockTicks, events);
        if (state.tick === recording.dueTick) recording.note(state);
      }
      ticks += MINUTE;
    }
    return ticks;
  };
}

const breathing = restingControls(320);
/** Another breath and another kick each time, no valve worked: a diver steering by hand. */
const steered: Controls[] = Array.from({ length: 61 }, (_, i) => ({
  ...breathing,
  lungCl: 320 + ((i * 7) % 11) - 5,
  finsN: (i % 7) - 3,
}));
/** Presses in one block of ten. */
const pressed: Controls[] = Array.from({ length: 120 }, (_, i) => ({
  ...steered[i % 61]!,
  jacketAdd: i % 20 === 3 ? 1 : 0,
  jacketVent: i % 20 === 13 ? 2 : 0,
}));
/** The same, and a new attitude every second and a half, so that the diver is never done turning. */
const flown: Controls[] = pressed.map((controls, i) => ({
  ...controls,
  pitchDeg: [0, 20, -15, 0][Math.floor(i / 30)]!,
}));
/** A valve pressed on every tick and a torque that never rests. */
const busy: Controls[] = Array.from({ length: 60 }, (_, i) => ({
  ...steered[i]!,
  jacketAdd: i % 2,
  jacketVent: i % 2 === 0 ? 1 + ((i >> 1) % 2) : 0,
  attitude: 1,
  torqueNm: (i % 30) - 15,
}));

/** A minute of automatic breathing with depth and speed kept at 10 Hz. */
function breathedMinute({ rig, start }: TimedDiver): () => number {
  const state = copyState(start);
  const rows = new Float64Array(1202);
  return () => {
    for (let minute = 0; minute < 6; minute++) {
      overwriteState(state, start);
      for (let row = 0; row <= 600; row++) {
        rows[2 * row] = state.depthM;
        rows[2 * row + 1] = state.speedMps;
        advance(rig, state, breathing, TICKS_PER_ROW);
      }
    }
    return 6;
  };
}

function odexMinute({ rig, start }: TimedDiver): () => number {
  const rows = new Float64Array(1202);
  return () => {
    for (let minute = 0; minute < 6; minute++) minuteByOdex(rig, start, rows);
    return 6;
  };
}

/** All rows by their letter; each is run in a process of its own. */
export const SCENARIOS: Readonly<Record<string, () => Scenario>> = {
  a: () => ({
    name: 'one step, all parts, breath and fins new every tick, recording ÷ one bare engine update',
    ours: minutes(FOAM, 1, steered),
    theirs: matterUpdates(),
    most: 0.6,
  }),
  b: () => ({
    name: 'one step in blocks of 6 between changes of breath and fins, recording ÷ one bare engine update',
    ours: minutes(FOAM, 6, steered),
    theirs: matterUpdates(),
    most: 0.4,
  }),
  c: () => ({
    name: 'a minute of automatic breathing ÷ the adaptive solver to 0.1 mm, 10 Hz each',
    ours: breathedMinute(FOAM),
    theirs: odexMinute(FOAM),
    most: 2,
  }),
  pressed: () => ({
    name: 'one step, a valve pressed in a tenth of the blocks of 6 ÷ one bare engine update',
    ours: minutes(FOAM, 6, pressed),
    theirs: matterUpdates(),
  }),
  flown: () => ({
    name: 'one step, the same and always turning ÷ one bare engine update',
    ours: minutes(FOAM, 6, flown),
    theirs: matterUpdates(),
  }),
  'every valve': () => ({
    name: 'one step, a valve pressed on every tick and turning ÷ one bare engine update',
    ours: minutes(FOAM, 1, busy),
    theirs: matterUpdates(),
  }),
  drysuit: () => ({
    name: 'one step, drysuit, blocks of 6 ÷ one bare engine update',
    ours: minutes(DRYSUIT, 6, steered),
    theirs: matterUpdates(),
  }),
  layers: () => ({
    name: 'one step, layered water, blocks of 6 ÷ one bare engine update',
    ours: minutes(LAYERS, 6, steered),
    theirs: matterUpdates(),
  }),
};

/**
 * A dive of so many minutes with everything recorded, held at 9 m by the breath alone, steered twice a second.
 * @returns simulated seconds
 */
export function heldMinutes(minutesLong: number): number {
  const dive = new Dive(FOAM.rig, FOAM.start, breathing);
  for (let half = 0; half < minutesLong * 120; half++) {
    const { depthM, speedMps } = dive.state;
    dive.steer({ ...breathing, lungCl: 320 + Math.min(Math.max(60 * (depthM - 9) + 600 * speedMps, -120), 200) });
    dive.advance(60);
  }
  if (Math.abs(dive.state.depthM - 9) > 1) throw new Error(`heldMinutes: ended at ${dive.state.depthM} m`);
  return minutesLong * 60;
}

/** The same left to itself: it drifts off, and most of it passes at the surface or on the bottom. */
export function driftingMinutes(minutesLong: number): number {
  const dive = new Dive(FOAM.rig, FOAM.start, breathing);
  dive.advance(minutesLong * MINUTE);
  return minutesLong * 60;
}
