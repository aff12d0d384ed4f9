import { rigOf, type Rig, type Setup } from '../../src/diver/index.ts';
import { startState, type DiveState } from '../../src/dive/index.ts';
import { neutralLeadKg } from '../../src/insight/index.ts';
import { EXAMPLE, changed, setupOf } from '../reference/rigs.ts';

/** A diver to be timed: all parts worn, hovering with gas in the jacket, so that minutes pass in mid-water. */
export interface TimedDiver {
  readonly rig: Rig;
  readonly start: DiveState;
}

function diver(setup: Setup, jacketM3: number): TimedDiver {
  const bare = rigOf({ ...setup, lead: [] });
  const leadKg = neutralLeadKg(bare, { depthM: 9, reserveBar: 200 }) + (jacketM3 * 1027) / 0.91;
  const piece = leadKg / 3;
  const rig = rigOf({
    ...setup,
    lead: [
      { massKg: piece, place: 'belt', releasable: true },
      { massKg: piece, place: 'belt', releasable: true },
      { massKg: piece, place: 'back', releasable: false },
    ],
  });
  return { rig, start: startState(rig, { depthM: 9, jacketM3, cylinderBar: 200 }) };
}

/** 5 mm foam, jacket gas, three pieces of lead, regulator, fins and mask, 12 L of steel. */
export const FOAM: TimedDiver = diver(EXAMPLE, 2e-3);

/** The same with a drysuit at its least loft and a little more. */
export const DRYSUIT: TimedDiver = (() => {
  const made = diver({ ...EXAMPLE, suit: setupOf('\nsuit: { kind: drysuit }').suit }, 2e-3);
  return { rig: made.rig, start: startState(made.rig, { depthM: 9, jacketM3: 1e-3, suitGasM3: 5e-3 }) };
})();

/** The same in fresh water over sea, with a mixing zone between. */
export const LAYERS: TimedDiver = diver(
  changed(EXAMPLE, {
    water: {
      layers: [
        { fromM: 0, salinityPsu: 5, temperatureC: 18, mixingM: 0 },
        { fromM: 7, salinityPsu: 35, temperatureC: 12, mixingM: 2 },
      ],
    },
  }),
  2e-3,
);
