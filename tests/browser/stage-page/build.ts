import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { leftOut } from '../../../tools/left-out.ts';
import { yamlModules } from '../../../tools/yaml-modules.ts';

/** Where the built page lies. */
export const stagePage = fileURLToPath(new URL('../../../node_modules/.cache/stage-page', import.meta.url));

/** Builds the page on which the stage is looked at by itself. */
export async function buildStagePage(): Promise<void> {
  await build({
    configFile: false,
    root: fileURLToPath(new URL('.', import.meta.url)),
    base: './',
    logLevel: 'error',
    plugins: [yamlModules(), leftOut()],
    build: {
      outDir: stagePage,
      emptyOutDir: true,
      target: 'es2022',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      chunkSizeWarningLimit: 1000,
    },
  });
}
