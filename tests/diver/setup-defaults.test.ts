import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { loadSetupText, readSetup } from '../../src/diver/file.ts';
import { EXAMPLE } from '../fixtures/setups/texts.ts';

/** The example as plain data, read without the room's own reader. */
const shown = parse(EXAMPLE) as Record<string, Record<string, unknown>>;

test('readSetup() reads the documented example to the values it shows', () => {
  const fins = { name: 'fins and mask', massKg: 2.4, volumeL: 2.3, headwardM: -1.2, backwardM: 0 };
  expect(readSetup(EXAMPLE)).toEqual({
    setup: {
      ...shown,
      water: { ...shown.water, line: false },
      suit: { ...shown.suit, softness: 1 },
      other: [{ name: 'regulator', massKg: 1.5, volumeL: 0.7, headwardM: 0, backwardM: 0 }, fins],
    },
  });
});

test('readSetup() gives every left-out key the value shown, except suit area, lead and other gear', () => {
  const { areaM2, ...suit } = loadSetupText('{}').suit as { areaM2: number };
  const { areaM2: _, ...shownSuit } = shown.suit;
  expect({ ...loadSetupText('{}'), suit }).toEqual({
    ...shown,
    water: { ...shown.water, line: false },
    suit: { ...shownSuit, softness: 1 },
    lead: [],
    other: [],
  });
  // 0.70 x 1.9803 m2, the Du Bois surface of 80 kg and 178 cm worked out by hand (derived).
  expect(areaM2).toBeCloseTo(0.7 * 1.9803, 4);
});

for (const section of ['water', 'diver', 'suit', 'jacket', 'hydrodynamics'] as const)
  for (const [key, value] of Object.entries(shown[section]))
    if (key !== 'areaM2')
      test(`readSetup() fills in ${section}.${key} when it alone is left out`, () => {
        const rest = Object.fromEntries(Object.entries(shown[section]).filter(([other]) => other !== key));
        const text = JSON.stringify({ ...shown, [section]: rest });
        expect(loadSetupText(text)[section]).toHaveProperty(key, value);
      });

test('readSetup() fills in the keys of a steel cylinder from the one shown and those of aluminium as a whole', () => {
  expect(loadSetupText('cylinders: [{ o2Percent: 32 }, { material: aluminium }]').cylinders).toEqual([
    { material: 'steel', waterL: 12, emptyKg: 14.9, externalL: 13.9, workingBar: 232, fillBar: 200, o2Percent: 32 },
    {
      material: 'aluminium',
      waterL: 11.1,
      emptyKg: 15.1,
      externalL: 16.5,
      workingBar: 207,
      fillBar: 200,
      o2Percent: 21,
    },
  ]);
});

test('readSetup() takes the suit area as a share of the body surface by cut', () => {
  const area = (text: string) => (loadSetupText(text).suit as { areaM2: number }).areaM2;
  expect(area('suit: { cut: two-piece }') / area('suit: { cut: one-piece }')).toBeCloseTo(1.1 / 0.7, 12);
  expect(area('suit: { kind: drysuit }')).toBe(area('suit: { cut: one-piece }'));
  expect(area('{ suit: { cut: two-piece }, diver: { massKg: 60, heightCm: 165 } }')).toBeCloseTo(1.1 * 1.6587, 4);
});

test('readSetup() knows a drysuit by its kind alone, and each shell by its foam', () => {
  const drysuit = (text: string) => loadSetupText(text).suit;
  const shared = { kind: 'drysuit', undergarmentL: 6, minimumLoftL: 4, gasL: 8, capacityL: 40 };
  const valves = { inletLps: 2, exhaustLps: 2, crackKPa: 1, massKg: 4, volumeL: 3 };
  const foam = { thicknessMm: 6, foamDensityKgPerM3: 300, gasFraction: 0.65, softness: 1 };
  const compressed = { thicknessMm: 4, foamDensityKgPerM3: 500, gasFraction: 0.35, softness: 0.8 };
  expect(drysuit('suit: { kind: drysuit }')).toMatchObject({ ...shared, ...valves, shell: 'membrane', thicknessMm: 0 });
  expect(drysuit('suit: { kind: drysuit, shell: foam }')).toMatchObject({ ...shared, ...foam });
  expect(drysuit('suit: { kind: drysuit, shell: compressed-foam }')).toMatchObject({ ...shared, ...compressed });
});

test('readSetup() has no suit keys for kind none', () => {
  expect(loadSetupText('suit: { kind: none }').suit).toEqual({ kind: 'none' });
});

test('readSetup() gives a loop to apparatus loop and to no other', () => {
  expect(loadSetupText('{}')).not.toHaveProperty('loop');
  const loop = { capacityL: 8, minimumL: 4, gasL: 6, diluentLps: 2, noseVentLps: 1, massKg: 12, volumeL: 11 };
  expect(loadSetupText('apparatus: loop').loop).toEqual(loop);
  expect(loadSetupText('{ apparatus: loop, loop: { massKg: 14 } }').loop).toEqual({ ...loop, massKg: 14 });
});

test('readSetup() takes what a layer leaves out from the water', () => {
  const text =
    'water: { salinityPsu: 30, temperatureC: 12, layers: [{ fromM: 0, salinityPsu: 1 }, { fromM: 6, temperatureC: 8 }] }';
  expect(loadSetupText(text).water.layers).toEqual([
    { fromM: 0, salinityPsu: 1, temperatureC: 12, mixingM: 0 },
    { fromM: 6, salinityPsu: 30, temperatureC: 8, mixingM: 0 },
  ]);
});

test('readSetup() puts lead on the belt, and lets go what a belt or pocket holds unless told otherwise', () => {
  const text =
    'lead: [{ massKg: 1 }, { massKg: 1, place: pocket }, { massKg: 1, place: back }, { massKg: 1, place: ankle }]';
  expect(loadSetupText(text).lead.map(({ place, releasable }) => [place, releasable])).toEqual([
    ['belt', true],
    ['pocket', true],
    ['back', false],
    ['ankle', false],
  ]);
  expect(loadSetupText('lead: [{ massKg: 1, releasable: false }]').lead[0].releasable).toBe(false);
});

test('readSetup() puts fins at the feet by the word in their name, and nothing else', () => {
  const headwardM = (name: string) =>
    loadSetupText(`other: [{ name: ${name}, massKg: 1, volumeL: 1 }]`).other[0].headwardM;
  for (const name of ['fins', 'Fins', 'long fins', 'one fin']) expect(headwardM(name)).toBe(-1.2);
  for (const name of ['finder', 'muffin', 'torch']) expect(headwardM(name)).toBe(0);
});
