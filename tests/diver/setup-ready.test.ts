import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { loadSetupText, readSetup } from '../../src/diver/file.ts';
import { READY_SETUPS, instantOf, netForceN, rigOf, type Setup } from '../../src/diver/index.ts';
import { neutralLeadKg } from '../../src/insight/index.ts';
import { EXAMPLE, READY_TEXTS } from '../fixtures/setups/texts.ts';

const setups = new Map([...READY_TEXTS].map(([id, text]) => [id, loadSetupText(text)]));
const leadKg = (setup: Setup) => setup.lead.reduce((sum, piece) => sum + piece.massKg, 0);
const solvedKg = (setup: Setup) => neutralLeadKg(rigOf(setup));
const ready = (id: string): Setup => setups.get(id)!;

test('READY_SETUPS lists every setup file once, with its own name and note', () => {
  const files = [...setups].map(([id, { name, note }]) => ({ id, name, note }));
  const byId = (a: { id: string }, b: { id: string }) => a.id.localeCompare(b.id);
  expect([...READY_SETUPS].sort(byId)).toEqual(files.sort(byId));
  expect(READY_SETUPS.length).toBeGreaterThanOrEqual(12);
  expect(new Set(READY_SETUPS.map(({ name }) => name)).size).toBe(READY_SETUPS.length);
});

for (const [id, setup] of setups)
  test(`readSetup() accepts ${id}, and again what it read, and rigOf() takes it`, () => {
    expect(readSetup(JSON.stringify(setup))).toEqual({ setup });
    const rig = rigOf(setup);
    expect(JSON.parse(JSON.stringify(rig))).toEqual(rig);
    for (const depthM of [0, setup.water.bottomM])
      expect(netForceN(rig, instantOf(rig, { depthM }))).toSatisfy(Number.isFinite);
    expect(parse(READY_TEXTS.get(id)!)).toMatchObject({ format: 1, name: setup.name, note: setup.note });
  });

for (const [id, setup] of setups)
  if (!['pair-heavy', 'two-piece-heavy', 'first-dive'].includes(id))
    test(`${id} carries the lead that makes it neutral, to the nearest quarter of a kilogram`, () => {
      expect(Math.abs(leadKg(setup) - solvedKg(setup))).toBeLessThanOrEqual(0.125 + 1e-9);
      expect(leadKg(setup) * 4).toBeCloseTo(Math.round(leadKg(setup) * 4), 9);
    });

test('first-dive carries one kilogram more than makes it neutral, 8 L in the jacket, a line and 12 m', () => {
  const setup = ready('first-dive');
  // Pieces are written to 10 g.
  expect(Math.abs(leadKg(setup) - solvedKg(setup) - 1)).toBeLessThanOrEqual(0.005);
  expect(setup).toMatchObject({
    jacket: { gasL: 8 },
    water: { bottomM: 12, line: true },
    cylinders: [{ fillBar: 200 }],
  });
});

test('two-piece-heavy is the two-piece with four kilograms more, and nothing else', () => {
  const without = ({ name: _, note: __, lead: ___, ...rest }: Setup) => rest;
  expect(without(ready('two-piece-heavy'))).toEqual(without(ready('two-piece')));
  expect(leadKg(ready('two-piece-heavy')) - leadKg(ready('two-piece'))).toBe(4);
});

test('temperate-sea is the documented example but for its lead, name and note', () => {
  const { lead: _, name: __, ...kit } = loadSetupText(EXAMPLE);
  expect(ready('temperate-sea')).toMatchObject(kit);
});

test('the pairs differ in one thing: lead in one, suit and the lead that goes with it in the other', () => {
  const without = ({ name: _, note: __, lead: ___, ...rest }: Setup) => rest;
  expect(without(ready('pair-light'))).toEqual(without(ready('pair-heavy')));
  expect(leadKg(ready('pair-heavy')) - leadKg(ready('pair-light'))).toBe(4);
  const thick = without(ready('pair-thick'));
  expect(without(ready('pair-thin'))).toEqual({ ...thick, suit: { ...thick.suit, thicknessMm: 3 } });
  expect(thick.suit).toMatchObject({ thicknessMm: 7 });
});

test('halocline holds a diver who was weighed in the water above: down above the boundary, up below it', () => {
  const rig = rigOf(ready('halocline'));
  const forceN = (depthM: number) => netForceN(rig, instantOf(rig, { depthM, cylinderBar: 50 }));
  expect(forceN(6)).toBeLessThan(0);
  expect(forceN(9)).toBeGreaterThan(0);
});

test('closed-loop hangs from no breath: the lungs are no part of it', () => {
  const rig = rigOf(ready('closed-loop'));
  const forceN = (lungM3: number) => netForceN(rig, instantOf(rig, { depthM: 10, lungM3 }));
  expect(forceN(5e-3)).toBe(forceN(2e-3));
});

/** physics notes, landmarks: derived; tolerance 0.05 kg. */
const LANDMARKS: readonly (readonly [claim: string, text: string, leadKg: number])[] = [
  ['5 mm in the sea', EXAMPLE, 3.73],
  [
    '7 mm two-piece in the sea',
    EXAMPLE.replace('cut: one-piece', 'cut: two-piece')
      .replace('thicknessMm: 5', 'thicknessMm: 7')
      .replace('areaM2: 1.35', 'areaM2: 2.1'),
    8.14,
  ],
  [
    '7 mm one-piece in fresh water of 8 degrees',
    EXAMPLE.replace('salinityPsu: 35', 'salinityPsu: 0')
      .replace('temperatureC: 15', 'temperatureC: 8')
      .replace('thicknessMm: 5', 'thicknessMm: 7'),
    2.14,
  ],
  ['5 mm in the sea with 11.1 L of aluminium', EXAMPLE.replace(/- \{ material.*\}/, '- { material: aluminium }'), 6.51],
];

for (const [claim, text, kg] of LANDMARKS)
  test(`readSetup() gives a setup whose neutral lead is ${kg} kg: ${claim}`, () => {
    expect(Math.abs(solvedKg(loadSetupText(text)) - kg)).toBeLessThanOrEqual(0.05);
  });

test('loadSetupText() throws every problem with its line', () => {
  expect(() => loadSetupText('format: 1\nwater:\n  bottomM: 0\n  depth: 3\n')).toThrow(
    /line 3: water\.bottomM.*\n.*line 4: water\.depth/,
  );
});
