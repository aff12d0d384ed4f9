import js from '@eslint/js';
import lit from 'eslint-plugin-lit';
import litA11y from 'eslint-plugin-lit-a11y';
import wc from 'eslint-plugin-wc';
import { defineConfig } from 'eslint/config';
import ts from 'typescript-eslint';

const pureRooms = ['water', 'gas', 'diver', 'dive', 'insight', 'pilot', 'lesson'].map((room) => `src/${room}/**/*.ts`);

// Clock, chance and output are handed in, so that a run is its initial state and its controls and nothing else.
const environment = [
  ...['Date', 'performance', 'Intl', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'],
  ...[
    'requestAnimationFrame',
    'console',
    'crypto',
    'fetch',
    'process',
    'window',
    'document',
    'navigator',
    'globalThis',
  ],
].map((name) => ({ name, message: 'A pure room gets clock, chance, storage and output handed in.' }));

// The last bit of sin, cos, exp, log and pow differs between engines; these five are exactly rounded everywhere.
const exact = '/^(sqrt|abs|min|max|floor|imul)$/';
const inexact =
  'Engines differ in the last bit here: the step uses + - * / and Math.sqrt, abs, min, max, floor, imul only.';
const exactlyRounded = [
  `MemberExpression[object.name="Math"][computed=false]:not([property.name=${exact}])`,
  'MemberExpression[object.name="Math"][computed=true]',
  ':not(MemberExpression) > Identifier[name="Math"]',
  'BinaryExpression[operator="**"]',
  'AssignmentExpression[operator="**="]',
].map((selector) => ({ selector, message: inexact }));

const noExtension = {
  regex: '^\\.\\.?/(?!.*\\.\\w+(\\?[\\w&]+)?$)',
  message: 'Relative imports carry their extension: ./thing.ts.',
};

export default defineConfig(
  { ignores: ['dist/', 'tests/reference/'] },
  js.configs.recommended,
  ts.configs.strict,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      // The compiler knows every name, types included.
      'no-undef': 'off',
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx', 'hack'], location: 'anywhere' }],
      'no-restricted-imports': ['error', { patterns: [noExtension] }],
      'max-lines': ['error', { max: 300, skipBlankLines: true }],
      eqeqeq: 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
      // Typed arrays in hot loops and values checked the line before; a `!` there says less than a rewrite would cost.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  {
    files: pureRooms,
    rules: {
      'no-restricted-globals': ['error', ...environment],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Chance is handed in.' }],
    },
  },
  {
    // All that a tick reaches, in whatever room it lies, and the pilots, whose hands a run is made of.
    files: [
      'src/dive/{step,full-tick,calm,balance,breath,flows,turn,fins,aftermath,attitude,events,state,recording}*.ts',
      'src/diver/{surface,volumes,net}.ts',
      'src/water/column.ts',
      'src/gas/real-gas.ts',
      'src/pilot/**/*.ts',
    ],
    rules: { 'no-restricted-syntax': ['error', ...exactlyRounded] },
  },
  {
    files: ['src/panels/**/*.ts', 'src/app/**/*.ts'],
    extends: [lit.configs['flat/recommended'], wc.configs['flat/recommended']],
    plugins: { 'lit-a11y': litA11y },
    rules: {
      ...litA11y.configs.recommended.rules,
      'no-restricted-imports': [
        'error',
        {
          patterns: [noExtension],
          paths: [
            {
              name: 'lit/directives/style-map.js',
              message: 'Its first write breaks the content policy; use style.setProperty.',
            },
          ],
        },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'TaggedTemplateExpression[tag.name=/^(html|svg)$/] TemplateElement[value.raw=/\\sstyle=/]',
          message: 'The content policy refuses style attributes; use a class, or style.setProperty.',
        },
      ],
    },
  },
  {
    files: ['tests/**/*.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        ...['test', 'it', 'describe', 'suite'].flatMap((object) =>
          ['only', 'skip', 'todo', 'skipIf', 'runIf', 'fails'].map((property) => ({
            object,
            property,
            message: 'Every committed test runs.',
          })),
        ),
      ],
    },
  },
);
