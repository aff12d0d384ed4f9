import type { Plugin } from 'vite';
import { loadSetupText } from '../src/diver/file.ts';
import { loadBenchLessonText, loadLessonText } from '../src/lesson/file.ts';
import { yamlDoors } from './yaml-doors.mjs';
import { moduleOfYaml } from './yaml-source.mjs';

const readers: Readonly<Record<string, (text: string) => unknown>> = {
  loadSetupText,
  loadLessonText,
  loadBenchLessonText,
};

/**
 * Turns an imported `.yaml` file into a module of plain data while the program is built, so that no parser is shipped
 * for the built-in setups and lessons. A file that its own room's reader refuses stops the build. Vitest takes the same
 * plugin; the command has `yaml-register.mjs`.
 */
export function yamlModules(): Plugin {
  return {
    name: 'yaml-modules',
    enforce: 'pre',
    transform: {
      filter: { id: /\/(src\/diver\/setups|lessons)\/.*\.yaml$/ },
      handler: (text, id) => ({ code: moduleOf(text, id), map: { mappings: '' }, moduleType: 'js' }),
    },
  };
}

function moduleOf(text: string, file: string): string {
  const door = yamlDoors.find(({ place }) => place.test(file));
  const read = door && readers[door.reader];
  if (!read) return moduleOfYaml(text, file);
  try {
    return `export default ${JSON.stringify(read(text))};\n`;
  } catch (problem) {
    throw new SyntaxError(`${file}: ${problem instanceof Error ? problem.message : String(problem)}`, {
      cause: problem,
    });
  }
}
