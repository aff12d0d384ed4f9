import { describe, expect, test } from 'vitest';
import { instantOf, midBreathM3, netForceN, type Rig } from '../../src/diver/index.ts';
import { copyState, restingControls, startState, type Controls, type DiveState } from '../../src/dive/index.ts';
import {
  MEANS,
  USUAL_ASK,
  recoveryMap,
  type MapBand,
  type RecoveryMap,
  type StoppingAsk,
} from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { carried, needed, type Needed } from './full-stepping.ts';
import { READY, RIGS, heavier } from './stopping-moments.ts';

const PLANES = ['gas', 'lead', 'speed'] as const;
/** From thin suit to thick, one suit that holds gas, a loop, water in layers, little gravity, two cylinders, a ledge. */
const SETUPS = [
  ['temperate-sea', 0],
  ['two-piece', 4],
  ['warm-sea', 2],
  ['drysuit-membrane', 0],
  ['closed-loop', 0],
  ['halocline', 0],
  ['other-world', 0],
  ['twin', 3],
  ['cold-lake', 1],
] as const;
/** Cells of each map: with nine setups and three planes a few more than 2,000. */
const CELLS = 75;
/** As near to a boundary as this, metres, the wrong side may be said. */
const NEAR_M = 0.15;

interface Plane {
  readonly what: string;
  readonly rig: Rig;
  readonly state: DiveState;
  readonly controls: Controls;
  readonly ask: StoppingAsk;
  readonly map: RecoveryMap;
}

/** A diver near neutral somewhere in the middle, sinking or rising slowly, and the map of it. */
function planeOf(chance: Chance, id: string, surplusKg: number, across: (typeof PLANES)[number]): Plane {
  const rig = surplusKg > 0 ? heavier(READY.get(id)!, surplusKg) : RIGS.get(id)!;
  const depthM = chance.between(0.3, 0.7) * rig.bottomM;
  const suitGasM3 = rig.drysuit ? rig.drysuit.minimumM3 + 1e-3 : 0;
  const at = { depthM, cylinderBar: chance.between(60, 200), ...(rig.drysuit ? { suitGasM3 } : {}) };
  const short = netForceN(rig, instantOf(rig, { ...at, jacketM3: 0 })) / (1000 * rig.column.gravityMps2);
  const jacketM3 = Math.max(rig.jacket.residualM3, -short);
  const lungM3 = midBreathM3(rig);
  const state = startState(rig, { ...at, jacketM3, lungM3, speedMps: chance.between(-0.3, 0.3) });
  const controls = restingControls(Math.round(lungM3 * 1e5));
  const ask = { ...USUAL_ASK, reactionS: chance.whole(0, 60) / 20 };
  return {
    what: `${id} ${across}`,
    rig,
    state,
    controls,
    ask,
    map: recoveryMap(rig, state, controls, ask, { across }),
  };
}

/** The moment of a cell, made from the words of the map and nothing of its code. */
function cellOf({ rig, state, map }: Plane, column: number, depthM: number): { rig: Rig; state: DiveState } {
  const value = map.across.values[column]!;
  const s = copyState(state);
  if (map.across.kind === 'speed') s.speedMps = value;
  if (map.across.kind === 'gas') s[`${map.across.of}Mol`] = (value * 101325) / rig.gasJPerMol;
  if (map.across.kind !== 'lead') return { rig, state: carried(rig, s, depthM) };
  const nowKg = rig.lead.reduce((kg, { massKg }) => kg + massKg, 0);
  const share = (nowKg + value) / nowKg;
  const lead = rig.lead.map((piece) => ({ ...piece, massKg: piece.massKg * share, volumeM3: piece.volumeM3 * share }));
  const heavierRig = { ...rig, lead };
  const { solidKg, solidM3, massHeadward, massBackward, volumeHeadward, volumeBackward } = startState(heavierRig, {
    depthM: 5,
  });
  Object.assign(s, { solidKg, solidM3, massHeadward, massBackward, volumeHeadward, volumeBackward });
  return { rig: heavierRig, state: carried(heavierRig, s, depthM) };
}

function flown(plane: Plane, column: number, depthM: number): Needed {
  const { rig, state } = cellOf(plane, column, depthM);
  return needed(rig, state, plane.controls, plane.ask);
}

const bandAt = (bands: readonly MapBand[], depthM: number) =>
  bands.find(({ fromM, toM }) => depthM >= fromM && depthM <= toM)!;
const edgeM = (bands: readonly MapBand[], depthM: number) =>
  Math.min(...bands.slice(1).map(({ fromM }) => Math.abs(fromM - depthM)), Infinity);
const isSame = (a: Needed, b: Needed) => a.means === b.means && a.way === b.way;
/** How much a cell asks for: 0 nothing … 6 lost. */
const rank = ({ means }: Needed) => (means === 'lost' ? MEANS.length : MEANS.indexOf(means));

const chance = new Chance(71);
const planes = SETUPS.flatMap(([id, surplusKg]) => PLANES.map((across) => planeOf(chance, id, surplusKg, across)));

describe('recoveryMap() against cells flown one by one with the full model', () => {
  const cells = planes.flatMap((plane) =>
    Array.from({ length: CELLS }, () => {
      const column = chance.whole(0, plane.map.columns.length - 1);
      const depthM = chance.between(plane.map.topM, plane.map.bottomM);
      const bands = plane.map.columns[column]!;
      const what = `${plane.what} ${column} ${depthM.toFixed(3)} m`;
      return { what, said: bandAt(bands, depthM), full: flown(plane, column, depthM), edgeM: edgeM(bands, depthM) };
    }),
  );
  const misses = cells.filter(({ said, full }) => !isSame(said, full));

  test('columns: 2,000 cells by chance, at least 99.3 % the same gentlest means and danger, every miss within 0.15 m of a boundary', () => {
    const tally = new Map<string, number>();
    for (const { full } of cells) tally.set(full.means, (tally.get(full.means) ?? 0) + 1);
    process.stdout.write(
      `\nRecovery maps: ${cells.length} cells flown, ${misses.length} otherwise, at most ${Math.max(0, ...misses.map((miss) => miss.edgeM)).toFixed(3)} m from a boundary; ${[...tally].map(([means, count]) => `${means} ${count}`).join(', ')}.\n`,
    );
    const far = misses.filter((miss) => miss.edgeM > NEAR_M);
    expect(
      far.map(({ what, said, full }) => `${what}: said ${said.means} ${said.way}, flown ${full.means} ${full.way}`),
    ).toEqual([]);
    expect(1 - misses.length / cells.length).toBeGreaterThanOrEqual(0.993);
    for (const means of [...MEANS, 'lost']) expect(tally.get(means) ?? 0, means).toBeGreaterThan(20);
  });

  test.each(MEANS)('columns: %s or gentler is enough, or is not, in at least 99.8 % of the cells as flown', (means) => {
    const most = MEANS.indexOf(means);
    const same = cells.filter(({ said, full }) => rank(said) <= most === rank(full) <= most);
    expect(same.length / cells.length).toBeGreaterThanOrEqual(0.998);
  });

  test('columns: 0.15 m to either side of a boundary the cell is what the map says, on 500 sides by chance', () => {
    const wrong: string[] = [];
    let sides = 0;
    while (sides < 500) {
      const plane = chance.one(planes);
      const column = chance.whole(0, plane.map.columns.length - 1);
      const bands = plane.map.columns[column]!;
      if (bands.length < 2) continue;
      const below = chance.whole(1, bands.length - 1);
      const depthM = bands[below]!.fromM + chance.one([-1, 1]) * (NEAR_M + 1e-3);
      if (edgeM(bands, depthM) < NEAR_M || depthM < plane.map.topM || depthM > plane.map.bottomM) continue;
      sides++;
      const [said, full] = [bandAt(bands, depthM), flown(plane, column, depthM)];
      if (!isSame(said, full))
        wrong.push(
          `${plane.what} ${column} ${depthM.toFixed(3)} m: said ${said.means} ${said.way}, flown ${full.means} ${full.way}`,
        );
    }
    expect(wrong).toEqual([]);
  });

  test('columns: just under the top and just over the bottom the cell is what the map says, in every eighth column', () => {
    const wrong: string[] = [];
    for (const plane of planes)
      for (let column = 0; column < plane.map.columns.length; column += 8)
        for (const depthM of [plane.map.topM + NEAR_M, plane.map.bottomM - NEAR_M]) {
          const bands = plane.map.columns[column]!;
          if (edgeM(bands, depthM) < NEAR_M) continue;
          const [said, full] = [bandAt(bands, depthM), flown(plane, column, depthM)];
          if (!isSame(said, full))
            wrong.push(
              `${plane.what} ${column} ${depthM.toFixed(2)} m: said ${said.means} ${said.way}, flown ${full.means} ${full.way}`,
            );
        }
    expect(wrong).toEqual([]);
  });
});
