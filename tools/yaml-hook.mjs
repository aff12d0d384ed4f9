import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { yamlDoors } from './yaml-doors.mjs';
import { moduleOfYaml } from './yaml-source.mjs';

/**
 * Node asks this for the source of each module: YAML is answered here, everything else by the next in line.
 * @type {import('node:module').LoadHook}
 */
export async function load(url, context, nextLoad) {
  if (!url.endsWith('.yaml')) return nextLoad(url, context);
  const file = fileURLToPath(url);
  const found = yamlDoors.find(({ place }) => place.test(url));
  if (found) {
    // The reader is TypeScript, which this thread cannot load: the module calls it where it is imported.
    const door = JSON.stringify(new URL(found.door, import.meta.url).href);
    const text = JSON.stringify(await readFile(file, 'utf8'));
    const source = `import { ${found.reader} } from ${door};\nexport default ${found.reader}(${text});\n`;
    return { format: 'module', source, shortCircuit: true };
  }
  return { format: 'module', source: moduleOfYaml(await readFile(file, 'utf8'), file), shortCircuit: true };
}
