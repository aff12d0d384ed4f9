import { defineConfig } from 'vitest/config';
import { yamlModules } from './tools/yaml-modules.ts';

/** What runs in real browsers, on machines that others use too. */
const browser = {
  environment: 'node',
  testTimeout: 60_000,
  hookTimeout: 60_000,
  // A machine that stands still for some seconds is no fault of the program. `npm run ok` names what needed it.
  retry: 1,
  // Seconds for what a page is to show, however slow the machine is.
  expect: { poll: { timeout: 10_000 } },
} as const;

/** Tests that count milliseconds or megabytes: nothing runs beside them. */
const alone = ['tests/browser/**/*.alone.test.ts'];

export default defineConfig({
  plugins: [yamlModules()],
  test: {
    allowOnly: false,
    passWithNoTests: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          setupFiles: ['tests/quiet.ts'],
          // What hangs is ended; how fast a test is is measured elsewhere.
          testTimeout: 60_000,
          // Left to itself the runner keeps a core free: of two, that is half the machine.
          maxWorkers: '100%',
        },
      },
      {
        extends: true,
        test: {
          ...browser,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: alone,
          // Most of a test is waiting for a page: two at once share the cores well, more would only slow each other down.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          ...browser,
          name: 'browser-alone',
          // They count milliseconds: whatever else the machine does can only add, so that the quietest of four counts.
          retry: 3,
          include: alone,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
