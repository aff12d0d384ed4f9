import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type IConfiguration, type ICruiseResult } from 'dependency-cruiser';

const config = createRequire(import.meta.url)('../../.dependency-cruiser.cjs') as Required<IConfiguration>;

/** Packages that the fixtures know, as a fresh clone would have them installed. */
const installed = ['matter-js', 'pixi.js', 'lit', 'idb', 'yaml', 'valibot'];
const packageJson = JSON.stringify({
  name: 'fixture',
  type: 'module',
  dependencies: Object.fromEntries(installed.map((name) => [name, '1.0.0'])),
  devDependencies: { odex: '1.0.0' },
});

/** Writes a small tree of files, by path, into a folder of its own that `use` gets; the folder is gone afterwards. */
export async function withTree<T>(files: Record<string, string>, use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'midwater-fixture-'));
  try {
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Names of the import rules, each once and sorted, that our own configuration finds broken in a tree of files. */
export function brokenRules(files: Record<string, string>): Promise<string[]> {
  const packages = [...installed, 'odex'].flatMap((name) => [
    [`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', main: 'index.js' })],
    [`node_modules/${name}/index.js`, 'module.exports = {};\n'],
  ]);
  const tree = { 'package.json': packageJson, ...Object.fromEntries(packages), ...files };
  return withTree(tree, async (folder) => {
    const { tsConfig: _ours, ...options } = config.options;
    const roots = [...new Set(Object.keys(files).map((path) => path.split('/')[0] ?? path))];
    const { output } = await cruise(roots, { ...options, baseDir: folder, validate: true, ruleSet: config });
    const { summary } = output as ICruiseResult;
    return [...new Set(summary.violations.map((violation) => violation.rule.name))].sort();
  });
}

/** Every rule of our own configuration. */
export const ruleNames: readonly string[] = config.forbidden.map((rule) => rule.name ?? '');
