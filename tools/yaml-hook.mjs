import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { moduleOfYaml } from './yaml-source.mjs';

/**
 * Node asks this for the source of each module: YAML is answered here, everything else by the next in line.
 * @type {import('node:module').LoadHook}
 */
export async function load(url, context, nextLoad) {
  if (!url.endsWith('.yaml')) return nextLoad(url, context);
  const file = fileURLToPath(url);
  return { format: 'module', source: moduleOfYaml(await readFile(file, 'utf8'), file), shortCircuit: true };
}
