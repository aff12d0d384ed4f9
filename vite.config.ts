import { defineConfig, type Plugin } from 'vite';
import { pagePolicy } from './tools/policy.mjs';
import { leftOut } from './tools/left-out.ts';
import { yamlModules } from './tools/yaml-modules.ts';

/** Writes the content policy into the built page, for whoever serves it without our headers. The dev server needs inline styles. */
function statePolicy(): Plugin {
  const tag = {
    tag: 'meta',
    attrs: { 'http-equiv': 'Content-Security-Policy', content: pagePolicy },
    injectTo: 'head-prepend' as const,
  };
  return { name: 'state-policy', apply: 'build', transformIndexHtml: () => [tag] };
}

const silentRooms = /\/src\/(water|gas|diver|dive|insight|pilot|lesson|bench|stage)\//;

export default defineConfig({
  base: './',
  plugins: [yamlModules(), leftOut(), statePolicy()],
  build: {
    target: 'es2022',
    manifest: true,
    // The policy allows no inline script and no data: font.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    // These rooms do nothing by being loaded: what a later chunk takes from their door need not come with the first.
    rolldownOptions: { treeshake: { moduleSideEffects: [{ test: silentRooms, sideEffects: false }] } },
  },
  worker: { format: 'es', plugins: () => [yamlModules()] },
  server: { host: '127.0.0.1' },
});
