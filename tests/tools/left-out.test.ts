import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { expect, test } from 'vitest';
import { LEFT_OUT, leftOut } from '../../tools/left-out.ts';

const library = join(import.meta.dirname, '../../node_modules/pixi.js/lib');

/** Names that a module of either kind exports. */
function exported(code: string): string[] {
  const listed = [...code.matchAll(/^export \{([^}]*)\}/gm)].flatMap(([, names]) => names!.split(','));
  const said = [...code.matchAll(/^export (?:function|class) (\w+)/gm)].map(([, name]) => name!);
  return [...listed, ...said].map((name) => name.trim()).filter(Boolean);
}

test.each(Object.entries(LEFT_OUT))('LEFT_OUT stands in for %s name by name', (path, code) => {
  const file = join(library, path);
  expect(existsSync(file), 'the library has no such part any more').toBe(true);
  expect(exported(code)).toEqual(exported(readFileSync(file, 'utf8')));
});

test('leftOut() keeps the parts, and what only they bring, out of what is built', async () => {
  const entry = join(import.meta.dirname, '../../src/stage/webgl.ts');
  const modulesOf = async (plugins: Plugin[]) => {
    const lib = { entry, formats: ['es' as const], fileName: () => 'out.mjs' };
    const built = await build({ configFile: false, logLevel: 'silent', plugins, build: { lib, write: false } });
    const chunks = [built].flat().flatMap((one) => ('output' in one ? one.output : []));
    return chunks.flatMap((one) => (one.type === 'chunk' ? Object.entries(one.modules) : []));
  };
  const lengthsOf = async (plugins: Plugin[]) =>
    new Map(
      (await modulesOf(plugins)).map(([id, { renderedLength }]) => [
        id.replace(/^.*pixi\.js\/lib\//, ''),
        renderedLength,
      ]),
    );
  const [whole, without] = [await lengthsOf([]), await lengthsOf([leftOut()])];
  for (const only of ['utils/browser/detectVideoAlphaMode.mjs', 'unsafe-eval/particle/particleUpdateFunctions.mjs']) {
    expect(whole.get(only)).toBeGreaterThan(0);
    expect(without.get(only) ?? 0).toBe(0);
  }
  for (const path of Object.keys(LEFT_OUT)) expect(without.get(path) ?? 0).toBeLessThan(400);
});
