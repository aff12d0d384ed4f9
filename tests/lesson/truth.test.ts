import { expect, test } from 'vitest';
import { instantOf, ledger, netOf, rigOf, type Rig } from '../../src/diver/index.ts';
import { READY_TEXTS } from '../fixtures/setups/texts.ts';
import { loadSetupText } from '../../src/diver/file.ts';
import { Dive, restingControls, startState } from '../../src/dive/index.ts';
import {
  answerPrompt,
  beginLesson,
  lessonSetup,
  predictionOutcomes,
  type LessonRun,
  type PredictStep,
} from '../../src/lesson/index.ts';
import { truthOf } from '../../src/lesson/truth.ts';
import { firstDive, firstDiveRig } from '../fixtures/lessons/first-dive.ts';

const rigNamed = (id: string) => rigOf(loadSetupText(READY_TEXTS.get(id)!));
const step = (id: string) =>
  firstDive.steps.find((one): one is PredictStep => one.kind === 'predict' && one.id === id)!;
const neutralGas: PredictStep = {
  ...{ kind: 'predict', id: 'neutral-gas', shape: 'number', topic: 'jacket-for-neutral', question: '?', why: '.' },
  ...{ atM: 8, unit: 'L', least: 0, most: 10, step: 0.5, within: 0.5 },
};
const rigs: [string, Rig][] = [
  ['first-dive', firstDiveRig],
  ['two-piece', rigNamed('two-piece')],
  ['pair-heavy', rigNamed('pair-heavy')],
];

test('truthOf() jacket-for-neutral leaves a ledger of nothing', () => {
  for (const [name, rig] of rigs) {
    const litres = truthOf(firstDive, rig, neutralGas) as number;
    const net = netOf(ledger(rig, instantOf(rig, { depthM: 8, jacketM3: litres * 1e-3, lungM3: 3.2e-3 })));
    expect(Math.abs(net), name).toBeLessThan(1e-6);
  }
});

test('truthOf() jacket-for-floating floats the head just clear', () => {
  for (const [name, rig] of rigs) {
    const volume = (truthOf(firstDive, rig, step('floating-gas')) as number) * 1e-3;
    const dive = new Dive(rig, startState(rig, { depthM: 0.41, jacketM3: volume, pitchDeg: 90 }), {
      ...restingControls(320),
      breath: 1,
      pitchDeg: 90,
    });
    dive.advance(120 * 60);
    expect(dive.state.depthM, name).toBeCloseTo(0.41, 2);
  }
});

test('truthOf() breath-lag lies between what drag and no drag would take', () => {
  const lag = truthOf(firstDive, firstDiveRig, step('breath-lag')) as number;
  // One litre is in after 2/3 s and lifts 10 N; with added mass some 200 kg move at 0.1 m/s: 20 N s, a third of a second of
  // filling counted half. Drag helps, the deeper water takes: both little.
  const massKg = ledger(firstDiveRig, instantOf(firstDiveRig, { depthM: 8 })).reduce(
    (sum, part) => sum + part.massKg,
    0,
  );
  const undraggedS = (massKg * 1.87 * 0.1) / (1026 * 9.80665 * 1e-3) + 0.5 * (1 / 1.5);
  expect(lag).toBeGreaterThan(0.8 * undraggedS);
  expect(lag).toBeLessThan(1.1 * undraggedS);
});

test('truthOf() gas-on-the-way-up: what is right at 8 m pushes up at 5 m', () => {
  expect(truthOf(firstDive, firstDiveRig, step('way-up'))).toBe('let-out');
  const litres = truthOf(firstDive, firstDiveRig, neutralGas) as number;
  const at8 = instantOf(firstDiveRig, { depthM: 8, jacketM3: litres * 1e-3, lungM3: 3.2e-3 });
  const at5 = { ...instantOf(firstDiveRig, { depthM: 5, lungM3: 3.2e-3 }), jacketMol: at8.jacketMol };
  expect(netOf(ledger(firstDiveRig, at5))).toBeGreaterThan(1);
});

test('truthOf() what-sinks follows the setup: gas with lead to spare, both for a light diver', () => {
  expect(truthOf(firstDive, firstDiveRig, step('leaving'))).toBe('gas');
  const lighter = (moreLeadKg: number) => {
    const lesson = { ...firstDive, setup: { ready: 'first-dive', changes: { moreLeadKg } } };
    return rigOf(lessonSetup(lesson, loadSetupText(READY_TEXTS.get('first-dive')!)));
  };
  const answers = [0, -1.6].map((kg) => truthOf(firstDive, lighter(kg), step('leaving')));
  expect(answers[0]).toBe('gas');
  expect(truthOf({ ...firstDive, start: { place: 'afloat', jacketL: 0 } }, lighter(0), step('leaving'))).toBe('breath');
});

test('truthOf() gas-growth-order puts the shallowest first, whatever the order of the items', () => {
  const order: PredictStep = {
    ...{ kind: 'predict', id: 'growth', shape: 'order', topic: 'gas-growth-order', question: '?', why: '.' },
    items: ['m10', 'm30', 'm3', 'm0'].map((id) => ({ id, words: id })),
  };
  expect(truthOf(firstDive, firstDiveRig, order)).toEqual(['m0', 'm3', 'm10', 'm30']);
});

test('predictionOutcomes() says right within the tolerance and wrong beyond it, in words', () => {
  const litres = truthOf(firstDive, firstDiveRig, neutralGas) as number;
  const said = (answer: number | null) => {
    const answers = [{ id: 'neutral-gas', answer, atRow: 505 }];
    const run: LessonRun = { ...beginLesson(firstDive), answers };
    const lesson = { ...firstDive, steps: [neutralGas, ...firstDive.steps] };
    return predictionOutcomes(lesson, firstDiveRig, run)[0]!;
  };
  expect(said(litres + 0.49)).toMatchObject({ right: true, atS: 50.5, came: `${litres.toFixed(1)} L` });
  expect(said(litres + 0.51).right).toBe(false);
  expect(said(null)).toMatchObject({ right: false, said: null });
});

test('predictionOutcomes() compares a choice with the outcome that the model computed', () => {
  const outcome = (answer: string) =>
    predictionOutcomes(firstDive, firstDiveRig, answerPrompt(firstDive, beginLesson(firstDive), answer))[0]!;
  expect(outcome('stays-clear')).toMatchObject({ right: true, said: 'My head stays clear of the water' });
  expect(outcome('sinks')).toMatchObject({ right: false, said: 'I sink', came: 'My head stays clear of the water' });
});
