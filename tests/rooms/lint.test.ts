import { ESLint } from 'eslint';
import { expect, test } from 'vitest';

const eslint = new ESLint();

/** Names of the lint rules that a text would break in a file of that name, each once. */
async function brokenIn(filePath: string, text: string): Promise<string[]> {
  const results = await eslint.lintText(text, { filePath });
  return [...new Set(results.flatMap((result) => result.messages.map(({ ruleId, message }) => ruleId ?? message)))];
}

const pureRooms = ['water', 'gas', 'diver', 'dive', 'insight', 'pilot', 'lesson'];
const stepFiles = [
  'src/dive/full-tick.ts',
  'src/dive/calm.ts',
  'src/dive/breath.ts',
  'src/dive/flows.ts',
  'src/dive/turn-heading.ts',
  'src/diver/volumes.ts',
  'src/water/column.ts',
  'src/gas/real-gas.ts',
  'src/pilot/autopilot.ts',
];

test.each(pureRooms)('%s may not know clock, chance or output', async (room) => {
  const file = `src/${room}/thing.ts`;
  for (const text of ['Date.now()', 'new Date()', 'performance.now()', "console.log('')", 'setTimeout(String, 1)']) {
    expect(await brokenIn(file, `export const a = ${text};\n`), text).toEqual(['no-restricted-globals']);
  }
  expect(await brokenIn(file, 'export const a = Math.random();\n')).toContain('no-restricted-properties');
});

test.each(stepFiles)('%s may not use arithmetic whose last bit differs between engines', async (file) => {
  const inexact = [
    'Math.sin(1)',
    'Math.pow(2, 3)',
    'Math.hypot(3, 4)',
    'Math.PI',
    "Math['exp'](1)",
    '2 ** 3',
    '[1].map(Math.log)',
  ];
  for (const text of inexact) {
    expect(await brokenIn(file, `export const a = ${text};\n`), text).toEqual(['no-restricted-syntax']);
  }
  expect(await brokenIn(file, 'const { sin } = Math;\nexport const a = sin(1);\n')).toEqual(['no-restricted-syntax']);
  expect(await brokenIn(file, 'let a = 2;\na **= 2;\nexport { a };\n')).toEqual(['no-restricted-syntax']);
});

test('the step may use the exactly rounded five', async () => {
  const text = 'export const a = Math.sqrt(Math.abs(Math.min(1, Math.max(0, Math.floor(2.5)))));\n';
  expect(await brokenIn('src/dive/step.ts', text)).toEqual([]);
});

test('a template may not carry what the content policy refuses', async () => {
  const text = 'import { html } from \'lit\';\nexport const a = html`<p style="color: red"></p>`;\n';
  expect(await brokenIn('src/panels/thing.ts', text)).toEqual(['no-restricted-syntax']);
  const map = "export { styleMap } from 'lit/directives/style-map.js';\n";
  expect(await brokenIn('src/panels/thing.ts', map)).toEqual(['no-restricted-imports']);
});

test('a picture in a panel has a text', async () => {
  const text = 'import { html } from \'lit\';\nexport const a = html`<img src="a.svg" />`;\n';
  expect(await brokenIn('src/panels/thing.ts', text)).toEqual(['lit-a11y/alt-text']);
});

test('relative imports carry their extension', async () => {
  expect(await brokenIn('src/water/thing.ts', "export * from './column';\n")).toEqual(['no-restricted-imports']);
  expect(await brokenIn('src/water/thing.ts', "export * from './column.ts';\n")).toEqual([]);
  expect(await brokenIn('src/app/thing.ts', "import Job from './job.ts?worker';\nexport { Job };\n")).toEqual([]);
});

test.each(['only', 'skip', 'todo'])('a test with .%s is not committed', async (word) => {
  const text = `import { test } from 'vitest';\ntest.${word}('a', () => {});\n`;
  expect(await brokenIn('tests/water/thing.test.ts', text)).toContain('no-restricted-properties');
});

test('a note of unfinished work is not committed', async () => {
  const note = ['TO', 'DO'].join('');
  expect(await brokenIn('src/water/thing.ts', `// ${note}: later\nexport {};\n`)).toEqual(['no-warning-comments']);
});
