import { expect, test } from 'vitest';
import { problemText, readSetup, type Problem } from '../../src/diver/file.ts';

function problems(text: string): readonly Problem[] {
  const read = readSetup(text);
  return 'problems' in read ? read.problems : [];
}

/** A text that is no setup, and line, path and the beginning of what is found. */
const REFUSED: readonly (readonly [claim: string, text: string, line: number, path: string, found: string])[] = [
  ['an empty file', '', 1, '', 'an empty file'],
  ['a file of comments', '# nothing\n# else\n', 1, '', 'an empty file'],
  ['a list', '\n- format: 1\n', 2, '', 'a list'],
  ['a bare word', 'setup', 1, '', '"setup"'],
  ['another format', 'name: x\nformat: 2\n', 2, 'format', '2'],
  ['a format in quotes', 'format: "1"', 1, 'format', '"1"'],
  ['a second document', 'name: a\n---\nname: b\n', 2, '', '---'],
  ['a key twice', 'name: a\nwater: {}\nname: b\n', 3, 'name', 'the key name a second time'],
  [
    'a key twice in a group',
    'water:\n  bottomM: 20\n  line: true\n  bottomM: 20\n',
    4,
    'water.bottomM',
    'the key bottomM a second time',
  ],
  ['a tab before a key', 'water:\n\tbottomM: 20\n', 2, '', 'bottomM: 20'],
  ['a key in the wrong column', 'water:\n  bottomM: 20\n   line: true\n', 2, '', 'bottomM: 20'],
  ['a bracket left open', 'jacket: {}\nlead: [{ massKg: 1 }\n', 2, '', 'lead: [{ massKg: 1 }'],
  ['a quote left open', 'name: "Sea\n', 1, '', 'name: "Sea'],
  ['two keys on a line', 'water: bottomM: 20\n', 1, '', 'water: bottomM: 20'],
  ['a tag', 'name: !thing x\n', 1, '', 'name: !thing x'],
  ['a key that is a list', '? [a]\n: 1\n', 1, '', '? [a]'],
  ['a name that nothing has', 'water:\n  bottomM: *depth\n', 2, 'water.bottomM', '*depth, a name'],
  ['a merged group', 'water: &w { bottomM: 5 }\nsuit: { <<: *w }\n', 2, 'suit.<<', 'the key <<'],
  ['a group where a list belongs', 'lead: { massKg: 1 }', 1, 'lead', 'a group of keys'],
  ['a list where a group belongs', 'water:\n  - bottomM: 20\n', 1, 'water', 'a list'],
  ['nothing where a group belongs', 'suit:\nlead: []\n', 1, 'suit', 'nothing'],
  ['nothing where a list belongs', 'suit: {}\nlead:\n', 2, 'lead', 'nothing'],
  ['an unknown kind of suit', 'suit:\n  kind: dry\n', 2, 'suit.kind', '"dry"'],
  ['a key of another kind of suit', 'suit:\n  thicknessMm: 5\n  shell: foam\n', 3, 'suit.shell', 'the key shell'],
  ['a thing without its volume', 'other:\n  - { name: lamp, massKg: 1 }\n', 2, 'other[0].volumeL', 'nothing'],
  ['a thing without a name', 'other:\n  - { name: " ", massKg: 1, volumeL: 1 }\n', 2, 'other[0].name', '""'],
  ['a name that is a number', 'name: 5', 1, 'name', '5'],
  ['a key that every object inherits', 'jacket:\n  toString: 1\n', 2, 'jacket.toString', 'the key toString'],
  ['a key that names the constructor', 'constructor: 1\n', 1, 'constructor', 'the key constructor'],
  [
    'a key that would change the prototype',
    'diver:\n  __proto__: { massKg: 60 }\n',
    2,
    'diver.__proto__',
    'the key __proto__',
  ],
];

for (const [claim, text, line, path, found] of REFUSED)
  test(`readSetup() refuses ${claim}, on its line`, () => {
    const all = problems(text);
    expect(all.map(problemText)).toHaveLength(1);
    expect(all[0]).toMatchObject({ line, path });
    expect(all[0].found.startsWith(found), all[0].found).toBe(true);
    expect(all[0].suggestion).not.toBe('');
  });

test('readSetup() refuses more than 256 kB, counted as bytes', () => {
  const kB256 = 256 * 1024;
  expect(problems(`#${'x'.repeat(kB256 - 4)}\n{}`)).toEqual([]);
  expect(problems(`#${'x'.repeat(kB256)}\n{}`)).toMatchObject([{ line: 1, found: 'a very large file' }]);
  expect(problems(`#${'\u6c34'.repeat(kB256 / 3)}\n{}`)).toMatchObject([{ line: 1, found: 'a very large file' }]);
});

test('readSetup() refuses values that unfold without end, quickly', () => {
  const rows = 'bcdefghij'
    .split('')
    .map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefghi'[i]}`).join(', ')}]`);
  const started = performance.now();
  expect(problems(['a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1]', ...rows].join('\n'))).toMatchObject([
    { line: 2, path: 'b[0]' },
  ]);
  expect(problems(`a: &a [1]\nlead: [${'*a, '.repeat(101)}]`)[0].line).toBe(2);
  expect(problems('lead: &a [*a]').length).toBeGreaterThan(0);
  expect(problems('['.repeat(200_000))).toHaveLength(1);
  expect(problems('{a: '.repeat(60_000)).length).toBeGreaterThan(0);
  expect(performance.now() - started).toBeLessThan(10_000);
});

test('readSetup() reads a value that is repeated by name a few times', () => {
  const read = readSetup('lead:\n  - &piece { massKg: 1.5 }\n  - *piece\n');
  expect('setup' in read && read.setup.lead.map(({ massKg }) => massKg)).toEqual([1.5, 1.5]);
  expect(problems('lead:\n  - &piece { massKg: 0 }\n  - *piece\n').map(({ line, path }) => [line, path])).toEqual([
    [2, 'lead[0].massKg'],
    [3, 'lead[1].massKg'],
  ]);
});

test('readSetup() reads a file with a byte-order mark and other line ends, and counts its lines', () => {
  expect(problems('\ufeffformat: 1\r\nwater:\r\n  bottomM: -1\r\n')).toMatchObject([
    { line: 3, path: 'water.bottomM' },
  ]);
  expect(problems('\ufeffformat: 1\r\nwater:\r\n  bottomM: 10\r\n')).toEqual([]);
});

test('readSetup() gives several breaks of YAML together, one a line', () => {
  const lines = problems('name: "a\\q"\nnote: !x y\nwater: {}\njacket: !z {}\n').map(({ line }) => line);
  expect(lines).toEqual([1, 2, 4]);
});

/** What is written, and what the suggestion says. */
const SUGGESTED: readonly (readonly [text: string, suggestion: string])[] = [
  ['suit: { thicknessMm: 5 mm }', 'Write 5, a bare number: the unit is in the name of the key'],
  ['suit: { thicknessMm: "5,5 mm" }', 'Write 5.5, a bare number: the unit is in the name of the key'],
  ['diver: { heightCm: 1.78 }', 'Write 100, the nearest allowed, or 178 if that was meant'],
  ['diver: { massKg: 80000 }', 'Write 250, the nearest allowed, or 80 if that was meant'],
  ['water: { gravityMps2: -9.8 }', 'Write 0.5, the nearest allowed, or 9.8 if that was meant'],
  ['water: { line: yes }', 'Write true'],
  ['water: { salinity: 35 }', 'Write salinityPsu'],
  ['diver: { weightKg: 80 }', 'Delete it'],
  ['cylinder: []', 'Write cylinders'],
  ['lead: [{ massKg: 1, place: bak }]', 'Write back'],
  ['suit: { kind: drysuti }', 'Write drysuit'],
  ['suit: { gasL: 8 }', 'Delete it, or write kind: drysuit'],
  ['name: 12', 'Write it in quotes: "12"'],
  ['lead: ', 'Write [] for none'],
  ['jacket: { zzz: 1 }', 'Delete it'],
];

for (const [text, suggestion] of SUGGESTED)
  test(`readSetup() answers ${text} with "${suggestion}"`, () => {
    expect(problems(text).map((problem) => problem.suggestion)).toEqual([suggestion]);
  });
