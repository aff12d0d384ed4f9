import { defineConfig } from 'vitest/config';
import { yamlModules } from './tools/yaml-modules.ts';

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
          testTimeout: 20_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          // Real browsers draw in software here: two at once would only slow each other down.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
