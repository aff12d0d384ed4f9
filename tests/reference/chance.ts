import { CONTROL_RANGES, restingControls, startState, type Controls, type DiveState } from '../../src/dive/index.ts';
import { midBreathM3, rigOf, type LeadPlace, type Rig, type Setup } from '../../src/diver/index.ts';
import { neutralLeadKg } from '../../src/insight/index.ts';
import { EXAMPLE, changed, setupOf } from './rigs.ts';

/** Chance from a seed: the same numbers every time. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** Between two numbers. */
  between(least: number, most: number): number {
    return least + (most - least) * this.#next();
  }

  /** A whole number, both ends included. */
  whole(least: number, most: number): number {
    return Math.floor(this.between(least, most + 1));
  }

  /** true in so many of a hundred. */
  percent(share: number): boolean {
    return this.#next() * 100 < share;
  }

  one<T>(list: readonly T[]): T {
    return list[this.whole(0, list.length - 1)]!;
  }

  // Mulberry32: enough for tests, and the same everywhere.
  #next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
}

const SUITS = [
  'suit: { kind: none }',
  'suit: { kind: foam, thicknessMm: 3 }',
  'suit: { kind: foam, thicknessMm: 5 }',
  'suit: { kind: foam, cut: two-piece, thicknessMm: 7 }',
  'suit: { kind: foam, thicknessMm: 7, softness: 0.8 }',
  'suit: { kind: drysuit, shell: membrane }',
  'suit: { kind: drysuit, shell: foam }',
  'suit: { kind: drysuit, shell: compressed-foam }',
];
const PLACES: readonly LeadPlace[] = ['belt', 'back', 'pocket', 'ankle'];

/** What a chance rig may be. */
export interface Among {
  /** Only rigs that can be calm: one water, foam by Boyle's law, open circuit. */
  readonly plain?: boolean;
}

/** A rig by chance, weighed to within three kilograms of neutral at 5 m. */
export function chanceRig(chance: Chance, { plain = false }: Among = {}): Rig {
  const suits = plain ? SUITS.filter((suit) => !/softness|compressed/.test(suit)) : SUITS;
  const { suit } = setupOf(`\n${chance.one(suits)}`);
  const bottomM = chance.whole(6, 45);
  const layered = !plain && chance.percent(25);
  const looped = !plain && chance.percent(20);
  const cylinder = (): Setup['cylinders'][number] => ({
    ...EXAMPLE.cylinders[0]!,
    fillBar: chance.percent(15) ? chance.between(1, 12) : chance.between(30, 230),
    o2Percent: chance.one([21, 32, 36]),
  });
  const base = changed(looped ? setupOf('\napparatus: loop') : EXAMPLE, {
    suit: suit as never,
    water: {
      salinityPsu: chance.one([0, 8, 35]),
      temperatureC: chance.whole(2, 28),
      bottomM,
      altitudeM: chance.one([0, 0, 2000]),
      gravityMps2: chance.one([9.80665, 9.80665, 3.2]),
      currentDownMps: chance.one([0, 0, 0.1, -0.1]),
      line: chance.percent(50),
      ...(chance.percent(30) ? { ledgeM: bottomM * 0.6 } : {}),
      ...(layered
        ? {
            layers: [
              { fromM: 0, salinityPsu: 5, temperatureC: 18, mixingM: 0 },
              { fromM: 3, salinityPsu: 33, temperatureC: 9, mixingM: chance.one([0, 1, 3]) },
            ],
          }
        : {}),
    },
    jacket: { residualL: chance.one([0, 0, 0.5]), capacityL: chance.one([10, 18]) },
    cylinders: chance.one([1, 1, 2, 3]) === 1 ? [cylinder()] : [cylinder(), cylinder()],
  });
  const leadKg = Math.max(0, neutralLeadKg(rigOf(base)) + chance.between(-3, 3));
  const pieces = chance.whole(1, 4);
  const lead = Array.from({ length: pieces }, () => {
    const place = chance.one(PLACES);
    return { massKg: leadKg / pieces, place, releasable: place === 'belt' || place === 'pocket' };
  });
  return rigOf({ ...base, lead });
}

/** A state to begin from by chance: any depth, attitude of whole degrees, some gas in the bags. */
export function chanceState(chance: Chance, rig: Rig): DiveState {
  return startState(rig, {
    depthM: chance.percent(15) ? chance.between(-0.3, 0.8) : chance.between(0.8, rig.bottomM - 1.4),
    jacketM3: chance.between(rig.jacket.residualM3, rig.jacket.capacityM3 * chance.one([0.1, 0.4, 1])),
    lungM3: chance.between(rig.lungs.residualM3, rig.lungs.totalM3),
    ...(rig.drysuit ? { suitGasM3: chance.between(rig.drysuit.minimumM3, 14e-3) } : {}),
    pitchDeg: chance.one([0, 0, 90, -90, 30, 180]),
    speedMps: chance.percent(30) ? chance.between(-0.6, 0.6) : 0,
  });
}

/** Controls by chance, whole numbers in range. Busy: any value of any of them. Otherwise mostly breathing, as divers do. */
export function chanceControls(chance: Chance, rig: Rig, busy: boolean, before: Controls): Controls {
  if (busy) {
    const out: Record<string, number> = {};
    for (const [name, [least, most]] of Object.entries(CONTROL_RANGES)) out[name] = chance.whole(least, most);
    // Most dives keep their lead, or nothing would be learnt of the rest.
    if (!chance.percent(2)) out['releaseMask'] = 0;
    return out as unknown as Controls;
  }
  const calm = {
    ...restingControls(Math.round(midBreathM3(rig) * 1e5) + chance.whole(-60, 60)),
    pitchDeg: before.pitchDeg,
    suitValveHPa: before.suitValveHPa,
  };
  if (chance.percent(15)) return { ...calm, pitchDeg: chance.one([0, 45, 90, -60]) };
  if (chance.percent(15)) return { ...calm, suitValveHPa: chance.one([-1, 0, 5, 30, 100]) };
  if (chance.percent(10)) return { ...calm, jacketAdd: 1 };
  if (chance.percent(10)) return { ...calm, jacketVent: chance.whole(1, 2) };
  if (chance.percent(8)) return { ...calm, suitAdd: 1 };
  if (chance.percent(8)) return { ...calm, finsN: chance.whole(-60, 60) };
  if (chance.percent(5)) return { ...calm, breath: 1 };
  if (chance.percent(2)) return { ...calm, releaseMask: chance.whole(0, 15) };
  if (chance.percent(6)) return { ...calm, waterDownMmps: chance.whole(-300, 300) };
  if (chance.percent(4)) return { ...calm, waterDownMmps2: chance.whole(-300, 300), nudgeUpN: chance.whole(-400, 400) };
  if (chance.percent(1)) return { ...calm, gasLeftBar: chance.whole(1, 300) };
  return calm;
}
