import type { Plugin } from 'vite';
import { moduleOfYaml } from './yaml-source.mjs';

/**
 * Turns an imported `.yaml` file into a module of plain data while the program is built, so that no parser is shipped
 * for the built-in setups and lessons. Vitest takes the same plugin; the command has `yaml-register.mjs`.
 */
export function yamlModules(): Plugin {
  return {
    name: 'yaml-modules',
    enforce: 'pre',
    transform: {
      filter: { id: /\/(src\/diver\/setups|lessons)\/.*\.yaml$/ },
      handler: (text, id) => ({ code: moduleOfYaml(text, id), map: { mappings: '' }, moduleType: 'js' }),
    },
  };
}
