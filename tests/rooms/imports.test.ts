import { afterAll, describe, expect, test } from 'vitest';
import { brokenRules, ruleNames } from './fixture.ts';

const order = 'water gas diver dive insight pilot bench lesson stage panels store app'.split(' ');
const seen = new Set<string>();

/** Each row: the rule, the file that breaks it, what that file says, and what else has to be there. */
const breaches: [rule: string, file: string, text: string, others?: Record<string, string>][] = [
  ['app-imports-no-cli', 'src/app/a.ts', door('cli'), doors('cli')],
  ['rooms-meet-at-the-door', 'src/gas/a.ts', "import '../water/inner.ts';", { 'src/water/inner.ts': 'export {};' }],
  ['no-circles', 'src/water/a.ts', "import './b.ts';", { 'src/water/b.ts': "import './a.ts';" }],
  ['no-circles', 'src/gas/a.ts', "import type { B } from './b.ts';\nexport type A = B;", typeCircle()],
  ['only-bench-imports-matter', 'src/stage/a.ts', "import 'matter-js';"],
  ['only-bench-imports-matter', 'tests/stage/a.test.ts', "import 'matter-js';"],
  ['only-stage-imports-pixi', 'src/app/a.ts', "await import('pixi.js');"],
  ['only-panels-and-app-import-lit', 'src/stage/a.ts', "import 'lit';"],
  ['only-panels-import-uplot', 'src/app/a.ts', "import 'uplot';"],
  ['only-cli-imports-png', 'src/app/a.ts', "import 'fast-png';"],
  ['only-store-imports-idb', 'src/app/a.ts', "import 'idb';"],
  ['only-file-readers-import-yaml', 'src/stage/a.ts', "import 'yaml';"],
  ['app-loads-yaml-on-demand', 'src/app/a.ts', "import 'yaml';"],
  ['pure-rooms-stand-alone', 'src/water/a.ts', "import 'lit';"],
  ['only-cli-knows-node', 'src/water/a.ts', "import 'node:fs';"],
  ['only-cli-knows-node', 'src/app/a.ts', "import 'node:fs';"],
  ['product-knows-no-tests-or-tools', 'src/app/a.ts', "import '../../tools/t.ts';", { 'tools/t.ts': 'export {};' }],
  ['product-ships-what-it-imports', 'src/cli/a.ts', "import 'odex';"],
  ['imports-resolve', 'src/water/a.ts', "import './gone.ts';"],
];

describe('a breach is reported', () => {
  test.each(breaches)('%s: %s says %s', async (rule, file, text, others = {}) => {
    const found = await brokenRules({ ...others, [file]: text });
    seen.add(rule);
    expect(found).toContain(rule);
  });

  test.each(order.slice(0, -1))('%s-imports-only-earlier-rooms: every later room and cli', async (room) => {
    const rule = `${room}-imports-only-earlier-rooms`;
    seen.add(rule);
    for (const later of [...order.slice(order.indexOf(room) + 1), 'cli']) {
      const found = await brokenRules({ ...doors(later), [`src/${room}/a.ts`]: door(later) });
      expect(found, `${room} imports ${later}`).toEqual([rule]);
    }
  });

  test.each(['stage', 'panels', 'store', 'app'])('cli-has-no-screen: cli imports %s', async (room) => {
    seen.add('cli-has-no-screen');
    expect(await brokenRules({ ...doors(room), 'src/cli/a.ts': door(room) })).toEqual(['cli-has-no-screen']);
  });

  afterAll(() => {
    expect([...seen].sort(), 'every rule has its breach above').toEqual([...ruleNames].sort());
  });
});

describe('what the house allows is not reported', () => {
  test('app imports every earlier room by its door, lit, and yaml on demand', async () => {
    const rooms = order.slice(0, -1);
    const text = `${rooms.map(door).join('\n')}\nimport 'lit';\nexport const read = () => import('yaml');\n`;
    expect(await brokenRules({ ...doors(...rooms), 'src/app/main.ts': text })).toEqual([]);
  });

  test('cli imports the pure rooms, the bench, Node and yaml', async () => {
    const rooms = order.slice(0, order.indexOf('stage'));
    const text = `${rooms.map(door).join('\n')}\nimport 'yaml';\nimport 'node:fs';\n`;
    expect(await brokenRules({ ...doors(...rooms), 'src/cli/main.ts': text })).toEqual([]);
  });

  test.each([
    ['src/bench/a.ts', 'matter-js'],
    ['tests/bench/a.test.ts', 'matter-js'],
    ['src/stage/a.ts', 'pixi.js'],
    ['src/panels/a.ts', 'lit'],
    ['src/store/a.ts', 'idb'],
    ['src/diver/a.ts', 'yaml'],
    ['src/lesson/a.ts', 'valibot'],
    ['tests/dive/a.test.ts', 'odex'],
  ])('%s imports %s', async (file, name) => {
    expect(await brokenRules({ [file]: `import '${name}';` })).toEqual([]);
  });
});

function door(room: string): string {
  return `import '../${room}/index.ts';`;
}

function doors(...rooms: string[]): Record<string, string> {
  return Object.fromEntries(rooms.map((room) => [`src/${room}/index.ts`, 'export {};']));
}

function typeCircle(): Record<string, string> {
  return { 'src/gas/b.ts': "import type { A } from './a.ts';\nexport type B = A;" };
}
