import { expect, test } from 'vitest';
import { problemText, readSetup } from '../../src/diver/file.ts';

/** The problems of a text, each as "line path: found". */
function inShort(text: string): string[] {
  const read = readSetup(text);
  return 'problems' in read ? read.problems.map(({ line, path, found }) => `${line} ${path}: ${found}`) : [];
}

/** A claim, a text that breaks it, and every problem that must come. */
const BREAKS: readonly (readonly [claim: string, text: string, problems: readonly string[]])[] = [
  [
    'a density together with a salinity',
    'water:\n  salinityPsu: 35\n  densityKgPerM3: 1010',
    ['3 water.densityKgPerM3: densityKgPerM3 together with salinityPsu'],
  ],
  [
    'a density together with layers',
    'water:\n  layers:\n    - { fromM: 0 }\n  densityKgPerM3: 1010',
    ['4 water.densityKgPerM3: densityKgPerM3 together with layers'],
  ],
  [
    'a surface pressure together with an altitude',
    'water:\n  altitudeM: 300\n  surfacePressureBar: 0.9',
    ['3 water.surfacePressureBar: surfacePressureBar together with altitudeM'],
  ],
  [
    'a ledge on the bottom',
    'water:\n  bottomM: 20\n  ledgeM: 20',
    ['3 water.ledgeM: a ledge at 20 m over a bottom at 20 m'],
  ],
  [
    'a ledge below the bottom that a file leaves out',
    'water: { ledgeM: 41 }',
    ['1 water.ledgeM: a ledge at 41 m over a bottom at 40 m'],
  ],
  [
    'a bottom above its ledge',
    'water:\n  ledgeM: 18\n  bottomM: 12',
    ['2 water.ledgeM: a ledge at 18 m over a bottom at 12 m'],
  ],
  [
    'a first layer below the surface',
    'water:\n  layers:\n    - { fromM: 2 }',
    ['3 water.layers[0].fromM: a first layer from 2 m'],
  ],
  [
    'mixing at the surface',
    'water:\n  layers:\n    - { fromM: 0, mixingM: 1 }',
    ['3 water.layers[0].mixingM: mixingM 1 in the first layer'],
  ],
  [
    'layers out of order',
    'water:\n  layers:\n    - { fromM: 0 }\n    - { fromM: 8 }\n    - { fromM: 8 }\n    - { fromM: 5 }',
    [
      '5 water.layers[2].fromM: a layer from 8 m after one from 8 m',
      '6 water.layers[3].fromM: a layer from 5 m after one from 8 m',
    ],
  ],
  [
    'mixing zones that overlap',
    'water:\n  layers:\n    - { fromM: 0 }\n    - { fromM: 6, mixingM: 4 }\n    - { fromM: 9, mixingM: 3 }',
    ['5 water.layers[2].mixingM: mixing from 7.5 m where the water above is mixed or ends at 8 m'],
  ],
  [
    'a mixing zone that reaches out of the water',
    'water:\n  layers:\n    - { fromM: 0 }\n    - { fromM: 1, mixingM: 3 }',
    ['4 water.layers[1].mixingM: mixing from -0.5 m where the water above is mixed or ends at 0 m'],
  ],
  [
    'a residual volume that is not below the end of a breath out',
    'diver:\n  residualL: 2.7',
    ['2 diver.residualL: endExpiratoryL 2.7 with residualL 2.7'],
  ],
  [
    'a residual volume that fills the lungs',
    'diver:\n  residualL: 3\n  totalLungL: 3\n  tidalL: 0.3',
    ['2 diver.residualL: residualL 3 with totalLungL 3', '2 diver.residualL: endExpiratoryL 2.7 with residualL 3'],
  ],
  ['a breath that does not fit', 'diver:\n  tidalL: 3.7', ['2 diver.tidalL: a breath of 3.7 L on top of 2.7 L']],
  [
    'a breath that does not fit a small chest',
    'diver:\n  totalLungL: 3.5',
    ['2 diver.totalLungL: a breath of 1 L on top of 2.7 L'],
  ],
  ['sex alone', 'diver:\n  sex: female', ['2 diver.sex: sex alone']],
  ['age alone', 'diver:\n  ageYears: 40', ['2 diver.ageYears: ageYears alone']],
  [
    'a height that the lung equations do not cover',
    'diver:\n  heightCm: 120\n  massKg: 40\n  sex: female\n  ageYears: 20',
    ['2 diver.heightCm: heightCm 120 with lung sizes from reference equations'],
  ],
  ['a body that nobody has', 'diver:\n  massKg: 25\n  heightCm: 200', ['2 diver.massKg: massKg 25 with heightCm 200']],
  [
    'a drysuit filled beyond its capacity',
    'suit:\n  kind: drysuit\n  gasL: 41',
    ['3 suit.gasL: gasL 41 above capacityL 40'],
  ],
  [
    'a least loft above capacity and undergarment',
    'suit:\n  kind: drysuit\n  minimumLoftL: 9\n  capacityL: 8',
    [
      '3 suit.minimumLoftL: minimumLoftL 9 above capacityL 8',
      '3 suit.minimumLoftL: minimumLoftL 9 above undergarmentL 6',
    ],
  ],
  [
    'a membrane with foam',
    'suit:\n  kind: drysuit\n  thicknessMm: 4',
    ['3 suit.thicknessMm: thicknessMm 4 with a membrane shell'],
  ],
  ['a jacket filled beyond its capacity', 'jacket:\n  gasL: 19', ['2 jacket.gasL: gasL 19 above capacityL 18']],
  [
    'a jacket that keeps more than it holds',
    'jacket:\n  capacityL: 5\n  residualL: 6',
    ['3 jacket.residualL: residualL 6 above capacityL 5'],
  ],
  [
    'a filling more than a tenth above working pressure',
    'cylinders:\n  - { fillBar: 232 }\n  - { fillBar: 256 }',
    ['3 cylinders[1].fillBar: fillBar 256 with workingBar 232'],
  ],
  ['a cylinder without a wall', 'cylinders:\n  - waterL: 15', ['2 cylinders[0].waterL: externalL 13.9 with waterL 15']],
  ['a cylinder of no metal', 'cylinders: [{ emptyKg: 1.5 }]', ['1 cylinders[0].emptyKg: 1.5 kg in 1.9 L of wall']],
  ['a loop on open apparatus', 'apparatus: open\nloop: { massKg: 12 }', ['2 loop: a loop with apparatus open']],
  ['a loop that apparatus left out', 'loop: {}', ['1 loop: a loop with apparatus open']],
  ['a loop without room', 'apparatus: loop\nloop:\n  minimumL: 8', ['3 loop.minimumL: minimumL 8 with capacityL 8']],
  [
    'a loop filled beyond its capacity',
    'apparatus: loop\nloop:\n  gasL: 8.5',
    ['3 loop.gasL: gasL 8.5 above capacityL 8'],
  ],
  [
    'a name given twice',
    'other:\n  - { name: torch, massKg: 1, volumeL: 1 }\n  - { name: Torch, massKg: 1, volumeL: 1 }',
    ['3 other[1].name: the name Torch a second time'],
  ],
  [
    'diver and kit that no water holds',
    'lead: [{ massKg: 20 }, { massKg: 20 }, { massKg: 20 }, { massKg: 20 }]',
    ['1 lead: diver and kit of 183.3 kg in 109.9 L'],
  ],
];

for (const [claim, text, problems] of BREAKS)
  test(`readSetup() refuses ${claim}`, () => {
    expect(inShort(text)).toEqual(problems);
  });

/** What lies just inside each of those rules. */
const KEPT: readonly (readonly [claim: string, text: string])[] = [
  ['a density with a temperature, which the gas takes', 'water: { densityKgPerM3: 1010, temperatureC: 8 }'],
  ['layers with a salinity, which they take', 'water: { salinityPsu: 30, layers: [{ fromM: 0 }] }'],
  ['a ledge just above the bottom', 'water: { bottomM: 20, ledgeM: 19.9 }'],
  ['mixing zones that touch', 'water: { layers: [{ fromM: 0 }, { fromM: 2, mixingM: 4 }, { fromM: 6, mixingM: 4 }] }'],
  ['a breath that fills the lungs', 'diver: { tidalL: 3.6 }'],
  ['lung sizes from sex and age', 'diver: { sex: female, ageYears: 40, heightCm: 165, massKg: 60 }'],
  ['a filling a tenth above working pressure', 'cylinders: [{ fillBar: 255.2 }]'],
  ['four cylinders', 'cylinders: [{}, {}, {}, {}]'],
  ['a full jacket', 'jacket: { gasL: 18 }'],
  [
    'a child',
    'diver: { massKg: 35, heightCm: 140, residualL: 0.7, endExpiratoryL: 1.4, totalLungL: 2.8, tidalL: 0.4 }',
  ],
  ['a giant', 'diver: { massKg: 180, heightCm: 215, totalLungL: 9 }'],
  ['gear whose name only contains that of a part', 'other: [{ name: lungs of a fish, massKg: 1, volumeL: 1 }]'],
];

for (const [claim, text] of KEPT)
  test(`readSetup() accepts ${claim}`, () => {
    expect(inShort(text)).toEqual([]);
  });

for (const name of [
  ...['tissue', 'gut', 'lungs', 'suit', 'suit-gas', 'jacket', 'jacket-gas', 'loop', 'above-water'],
  ...['cylinder-1', 'cylinder-9', 'lead-12', 'Lungs', '  suit '],
])
  test(`readSetup() refuses other gear that is called "${name}", a part of the ledger`, () => {
    expect(inShort(`other:\n  - { name: "${name}", massKg: 1, volumeL: 1 }`)).toEqual([
      `2 other[0].name: the name ${name.trim()}, that of a part`,
    ]);
  });

/** A key, and what stands below and above its range. */
const RANGES: readonly (readonly [path: string, below: number | undefined, above: number | undefined])[] = [
  ['water.salinityPsu', -0.1, 42.1],
  ['water.temperatureC', -2.1, 40.1],
  ['water.altitudeM', -431, 6001],
  ['water.gravityMps2', 0.49, 30.1],
  ['water.bottomM', 1.4, 151],
  ['water.surfacePressureBar', 0.19, 5.1],
  ['water.densityKgPerM3', 899, 1301],
  ['diver.bodyFatPercent', 2.9, 70.1],
  ['diver.breathPeriodS', 1.9, 31],
  ['diver.ageYears', 17, 81],
  ['suit.thicknessMm', -0.1, 12.1],
  ['suit.gasFraction', -0.01, 0.96],
  ['suit.softness', -0.01, 1.01],
  ['jacket.reliefBar', 0, 1.1],
  ['hydrodynamics.addedMassLevel', -0.01, 3.1],
  ['hydrodynamics.dragAreaUprightM2', 0, 5.1],
];

for (const [path, ...values] of RANGES)
  test(`readSetup() refuses ${path} outside its range and says the range`, () => {
    const [section, key] = path.split('.');
    for (const value of values) {
      const read = readSetup(`${section}:\n  ${key}: ${value}`);
      const problems = 'problems' in read ? read.problems.filter((problem) => problem.found === String(value)) : [];
      expect(problems.map(problemText)).toEqual([
        expect.stringMatching(new RegExp(`^line 2: ${path}: .*a number from .* to `)),
      ]);
    }
  });

test('readSetup() refuses too many cylinders, lead pieces and things, and no cylinder at all', () => {
  const many = (entry: string, count: number) =>
    `[${Array.from({ length: count }, (_, i) => entry.replace('#', String(i))).join(', ')}]`;
  const thing = '{ name: thing #, massKg: 0.1, volumeL: 0.1 }';
  expect(inShort('cylinders: []')).toEqual(['1 cylinders: an empty list']);
  expect(inShort(`cylinders: ${many('{}', 5)}`)).toEqual(['1 cylinders: a list']);
  expect(inShort(`lead: ${many('{ massKg: 0.5 }', 31)}`)).toEqual([]);
  expect(inShort(`lead: ${many('{ massKg: 0.5 }', 32)}`)).toEqual(['1 lead: a list']);
  expect(inShort(`other: ${many(thing, 40)}`)).toEqual([]);
  expect(inShort(`other: ${many(thing, 41)}`)).toEqual(['1 other: a list']);
});

test('readSetup() judges the rules in what is sound of a file, and in no more', () => {
  const text = `diver:
  residualL: 1.5 L
  endExpiratoryL: 1
jacket:
  gasL: 20
cylinders:
  - { waterL: big, externalL: 5, fillBar: 300 }
lead:
  - { place: belt }
`;
  expect(inShort(text)).toEqual([
    '2 diver.residualL: "1.5 L"',
    '5 jacket.gasL: gasL 20 above capacityL 18',
    '7 cylinders[0].waterL: "big"',
    '7 cylinders[0].fillBar: fillBar 300 with workingBar 232',
    '9 lead[0].massKg: nothing',
  ]);
});
