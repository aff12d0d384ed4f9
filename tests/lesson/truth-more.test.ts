import { expect, test } from 'vitest';
import { loadSetupText } from '../../src/diver/file.ts';
import { HEAD_OUT_M, instantOf, ledger, midBreathM3, netOf, rigOf, type Rig } from '../../src/diver/index.ts';
import {
  Dive,
  advance,
  copyState,
  midBreathCl,
  restingControls,
  startState,
  type DiveState,
} from '../../src/dive/index.ts';
import { USUAL_LUNGS, neutralLeadKg } from '../../src/insight/index.ts';
import { LESSONS, lessonSetup, type Lesson, type PredictStep } from '../../src/lesson/index.ts';
import { truthOf } from '../../src/lesson/truth.ts';
import type { Topic } from '../../src/lesson/topics.ts';
import { READY_TEXTS } from '../fixtures/setups/texts.ts';

// What topics say, against closed forms, against setups that are changed as a file would, and against flying the full model.
const setupNamed = (id: string) => loadSetupText(READY_TEXTS.get(id)!);
const rigNamed = (id: string) => rigOf(setupNamed(id));
const sea = rigNamed('temperate-sea');
const lesson = LESSONS[0]!;
const G = 9.80665;

/** What the model says to a topic. */
function said(rig: Rig, topic: Topic, parameters: Partial<PredictStep> = {}, of: Lesson = lesson) {
  const base = { kind: 'predict', id: 'asked', question: '', why: '', shape: 'number', topic, ...parameters };
  return truthOf(of, rig, base as unknown as PredictStep);
}
const number = (...asked: Parameters<typeof said>) => said(...asked) as number;

test('two kilograms are two over the density of the sea in litres', () => {
  expect(number(sea, 'litres-for-kilograms', { atM: 6, kg: 2 })).toBeCloseTo((2 / 1026) * 1e3, 2);
});

test('gas-curve is p0 over p of the very water, also under thin air', () => {
  for (const id of ['temperate-sea', 'altitude-lake']) {
    const rig = rigNamed(id);
    const { setup: _, ...curve } = { setup: id, shape: 'curve', along: [0, 5, 10, 30] } as const;
    const densityKgPerM3 = id === 'temperate-sea' ? 1026 : 999.7;
    const surfacePa = id === 'temperate-sea' ? 101_325 : 79_500;
    (said(rig, 'gas-curve', curve as never) as number[]).forEach((share, i) => {
      const depthM = curve.along[i]!;
      expect(share).toBeCloseTo(surfacePa / (surfacePa + densityKgPerM3 * G * depthM), 2);
    });
  }
});

test('lead in other water and in another suit is that of the setup changed as a file would change it', () => {
  const changed = (changes: object) =>
    rigOf(lessonSetup({ ...lesson, setup: { ready: 'temperate-sea', changes } }, setupNamed('temperate-sea')));
  for (const psu of [0, 15, 40])
    expect(number(sea, 'lead-in-other-water', { toPsu: psu })).toBeCloseTo(
      neutralLeadKg(changed({ salinityPsu: psu })) - neutralLeadKg(sea),
      9,
    );
  for (const mm of [3, 7])
    expect(number(sea, 'lead-in-other-suit', { suitShare: mm / 5 })).toBeCloseTo(
      neutralLeadKg(changed({ suitThicknessMm: mm })) - neutralLeadKg(sea),
      9,
    );
  expect(number(changed({ moreLeadKg: 2 }), 'lead-too-much')).toBeCloseTo(number(sea, 'lead-too-much') + 2, 9);
});

test('lighter at reserve is the mass of the gas breathed; the swing ends by as much', () => {
  const massKg = (cylinderBar: number) =>
    ledger(sea, instantOf(sea, { depthM: 5, cylinderBar })).reduce((sum, part) => sum + part.massKg, 0);
  const lost = number(sea, 'lighter-at-reserve');
  expect(lost).toBeCloseTo(massKg(200) - massKg(50), 6);
  const [full, reserve] = said(sea, 'swing-curve', { shape: 'curve', along: [200, 50], atM: 5 } as never) as number[];
  expect(reserve! - full!).toBeCloseTo(lost, 3);
  expect(Math.abs(reserve!)).toBeLessThan(0.03);
});

test('more lead wants its weight in water as gas, less what it pushes aside itself', () => {
  // Gas at 10 m weighs something too: p M / R T.
  const gasKgPerM3 = ((101_325 + 1026 * G * 10) * 0.02896) / (8.314 * 288.15);
  const [now, more] = [0, 4].map((kg) => number(sea, 'jacket-with-more-lead', { atM: 10, kg }));
  expect(more! - now!).toBeCloseTo(((4 * (1 - 1026 / 11340)) / (1026 - gasKgPerM3)) * 1e3, 2);
  const curve = said(sea, 'jacket-curve', { shape: 'curve', along: [10] } as never) as number[];
  expect(curve[0]).toBeCloseTo(now!, 9);
});

test('gas to move is what two hovers differ by, at the depth arrived at', () => {
  const litres = (atM: number) => number(sea, 'jacket-for-neutral', { atM });
  const grown = (litres(18) * (101_325 + 1026 * G * 18)) / (101_325 + 1026 * G * 5);
  expect(number(sea, 'gas-to-move', { atM: 18, toM: 5 })).toBeCloseTo(grown - litres(5), 1);
});

test('suit-gas keeps the volume of the suit by Boyle', () => {
  const rig = rigNamed('drysuit-membrane');
  const pa = (depthM: number) => 101_325 + 1027.5 * G * depthM;
  expect(number(rig, 'suit-gas', { atM: 4, toM: 12 })).toBeCloseTo(8 * (1 - pa(4) / pa(12)), 2);
  expect(number(sea, 'suit-gas', { atM: 4, toM: 12 })).toBe(0);
});

test('an offset doubles in the time said: the full model, a centimetre off, with nothing to slow it', () => {
  const depthM = 8;
  const doublingS = number(sea, 'doubling-time', { atM: depthM });
  // From rest x = x0 cosh(λt): twice x0 at λt = arcosh 2.
  const afterS = (Math.acosh(2) * doublingS) / Math.LN2;
  const led = number(sea, 'drift-leads', { atM: depthM, byM: -0.01, offL: 0, afterS });
  expect((depthM - led) / 0.01).toBeGreaterThan(1.9);
  expect((depthM - led) / 0.01).toBeLessThan(2.05);
});

/** Neutral at mid-breath, lungs kept there. */
function neutralAt(rig: Rig, depthM: number, moreM3 = 0): DiveState {
  const jacketM3 = number(rig, 'jacket-for-neutral', { atM: depthM }) * 1e-3 + moreM3;
  return startState(rig, { depthM, jacketM3: Math.max(jacketM3, rig.jacket.residualM3), lungM3: midBreathM3(rig) });
}

/** The full model under a first and then a second set of controls, until the motion ends or the head is out. */
function turnsAtM(rig: Rig, start: DiveState, afterS: number, then: object, way: 1 | -1): number | null {
  const state = copyState(start);
  const idle = restingControls(midBreathCl(rig));
  advance(rig, state, idle, Math.round(afterS * 120));
  for (let ticks = 0; ticks < 120 * 120; ticks += 6) {
    if (state.speedMps * way <= 0 && ticks > 0) return state.depthM;
    if (state.depthM < HEAD_OUT_M) return null;
    advance(rig, state, { ...idle, ...then }, 6);
  }
  return null;
}

test('stops-at and its price are where the full model stops', () => {
  const rig = rigNamed('two-piece-heavy');
  const start = neutralAt(rig, 6, -1);
  for (const afterS of [5, 10, 20]) {
    const flown = turnsAtM(rig, start, afterS, { jacketAdd: 1 }, 1)!;
    expect(Math.abs(number(rig, 'stops-at', { atM: 6, afterS }) - flown)).toBeLessThan(0.15);
    const later = turnsAtM(rig, start, afterS + 1, { jacketAdd: 1 }, 1)!;
    expect(number(rig, 'second-costs', { atM: 6, afterS })).toBeCloseTo(later - flown, 1);
  }
});

test('latest-vent is the last second at which the full model still stops under water', () => {
  const rig = rigOf({ ...setupNamed('temperate-sea') });
  const seconds = number(rig, 'latest-vent', { atM: 12, offL: 4 });
  const start = neutralAt(rig, 12, 4e-3);
  expect(turnsAtM(rig, start, seconds - 1, { jacketVent: 2 }, -1)).not.toBeNull();
  expect(turnsAtM(rig, start, seconds + 2, { jacketVent: 2 }, -1)).toBeNull();
});

test('lost-lead-rate is what a diver reaches whose piece of that mass goes', () => {
  // The first piece of this belt is two kilograms.
  const dive = new Dive(sea, neutralAt(sea, 10), { ...restingControls(midBreathCl(sea)), breath: 1, releaseMask: 1 });
  let fastest = 0;
  while (dive.state.depthM > HEAD_OUT_M && dive.tick < 60 * 120) {
    dive.advance(12);
    const row = dive.recording.rows - 1;
    const from = Math.max(0, row - 30);
    const rose = dive.recording.at(from, 'depthM') - dive.recording.at(row, 'depthM');
    fastest = Math.max(fastest, (rose / (row - from)) * 600);
  }
  expect(Math.abs(number(sea, 'lost-lead-rate', { atM: 10, kg: 2 }) / fastest - 1)).toBeLessThan(0.02);
});

test('breath-reaches-to is where full lungs just balance an empty jacket', () => {
  const depthM = number(sea, 'breath-reaches-to');
  const at = instantOf(sea, { depthM, jacketM3: sea.jacket.residualM3, lungM3: USUAL_LUNGS.mostM3 });
  expect(Math.abs(netOf(ledger(sea, at)))).toBeLessThan(0.1);
});

test('posture changes no force and the speed by the drag area', () => {
  expect(said(sea, 'posture-force', { shape: 'choice', atM: 5, kg: 1 } as never)).toBe('same');
  expect(sea.dragAreaUprightM2).toBeLessThan(sea.dragAreaLevelM2);
  expect(said(sea, 'posture-speed', { shape: 'choice', atM: 5, kg: 1 } as never)).toBe('upright');
  const flat = { ...sea, dragAreaUprightM2: sea.dragAreaLevelM2, addedMassUpright: sea.addedMassLevel };
  expect(said(flat, 'posture-speed', { shape: 'choice', atM: 5, kg: 1 } as never)).toBe('same');
});

test('a breath lifts on open circuit and does nothing on a loop; a layer holds, even water does not', () => {
  const choice = (id: string, topic: Topic, atM: number) =>
    said(rigNamed(id), topic, { shape: 'choice', atM } as never);
  expect(choice('temperate-sea', 'deep-breath', 8)).toBe('up');
  expect(choice('closed-loop', 'deep-breath', 8)).toBe('nothing');
  expect(choice('halocline', 'comes-back', 7)).toBe('comes-back');
  expect(choice('halocline', 'comes-back', 15)).toBe('runs-away');
});

test('still-stops gets worse with what is missing and how fast it goes', () => {
  const order = ['breath', 'gas', 'all', 'too-late'];
  const asked = (offL: number, speedMpmin: number) =>
    order.indexOf(
      said(rigNamed('two-piece'), 'still-stops', { shape: 'choice', atM: 8, offL, speedMpmin } as never) as string,
    );
  for (const [less, more] of [
    [asked(-0.5, 4), asked(-3, 4)],
    [asked(-0.5, 4), asked(-3, 20)],
    [asked(1, -4), asked(6, -25)],
  ])
    expect(less).toBeLessThan(more!);
});

test('lead let go floats who has enough of it', () => {
  const choice = (id: string) => said(rigNamed(id), 'lead-let-go', { shape: 'choice' } as never);
  expect(choice('two-piece-heavy')).toBe('floats-clear');
  expect(choice('halocline')).not.toBe('floats-clear');
});
