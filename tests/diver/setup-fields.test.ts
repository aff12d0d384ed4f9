import { expect, test } from 'vitest';
import {
  bounded,
  checkYaml,
  choice,
  editDistance,
  group,
  list,
  nearest,
  number,
  readYaml,
  text,
  yesNo,
} from '../../src/diver/file.ts';

/** Another kind of file than a setup, made of the same fields. */
const shelf = group({
  label: text(8),
  open: yesNo(),
  boxes: list(group({ sizeL: bounded(1, 9), colour: choice(['red', 'blue']), weightKg: number(0, 5) }), 1, 2),
});

function checked(source: string) {
  const yaml = readYaml(source);
  if (!('value' in yaml)) throw new Error('not YAML');
  return checkYaml(shelf, yaml);
}

test('checkYaml() gives what it has checked, left-out keys absent, text without blanks around it', () => {
  const { output, problems, wrong } = checked('label: " a b "\nboxes:\n  - { sizeL: 2, colour: red }\n');
  expect({ output, problems, wrong }).toEqual({
    output: { label: 'a b', boxes: [{ sizeL: 2, colour: 'red' }] },
    problems: [],
    wrong: [],
  });
});

test('checkYaml() gives the problems of any file of such fields together and in order', () => {
  const source =
    'boxes:\n  - { sizeL: 0, color: red }\n  - { sizeL: 3, weightKg: heavy }\nopen: maybe\nopen: 1\nlable: long enough\n';
  const { problems, output, wrong } = checked(source);
  expect(output).toBeUndefined();
  expect(problems.map(({ line, path, suggestion }) => [line, path, suggestion])).toEqual([
    [1, 'label', 'Add label'],
    [2, 'boxes[0].color', 'Write colour'],
    [2, 'boxes[0].sizeL', 'Write 1, the nearest allowed'],
    [3, 'boxes[1].weightKg', 'Write a bare number such as 3'],
    [5, 'open', 'Keep this one or the one on line 4'],
    [5, 'open', 'Write true'],
    [6, 'lable', 'Write label'],
  ]);
  expect(wrong).toContainEqual(['boxes', 0, 'colour']);
});

test('editDistance() counts letters left out, added, changed and swapped, without regard to capitals', () => {
  const distances: [string, string, number][] = [
    ['', '', 0],
    ['', 'abc', 3],
    ['belt', 'belt', 0],
    ['Belt', 'bELT', 0],
    ['bel', 'belt', 1],
    ['beelt', 'belt', 1],
    ['bolt', 'belt', 1],
    ['blet', 'belt', 1],
    ['back', 'belt', 3],
    ['kitten', 'sitting', 3],
  ];
  for (const [one, other, distance] of distances) {
    expect(editDistance(one, other), `${one} ${other}`).toBe(distance);
    expect(editDistance(other, one), `${other} ${one}`).toBe(distance);
  }
});

test('nearest() guesses a word that is near or begun, with or without its unit, and no other', () => {
  const words = ['salinityPsu', 'densityKgPerM3', 'bottomM', 'gasL'];
  expect(['salinty', 'density', 'bottom', 'bot', 'gas', 'gasl'].map((word) => nearest(word, words))).toEqual([
    ...['salinityPsu', 'densityKgPerM3', 'bottomM', 'bottomM', 'gasL', 'gasL'],
  ]);
  for (const word of ['', 'x', 'temperature', 'x'.repeat(50)]) expect(nearest(word, words)).toBeUndefined();
});
