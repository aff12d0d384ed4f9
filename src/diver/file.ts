/*
 * The second public door of this room: reading files that people write, setups first of all. It carries the YAML reader and
 * the validator, which the first load of the page does without.
 */
export { checkYaml, type CheckedYaml } from './checked-yaml.ts';
export { bounded, choice, group, list, number, text, yesNo } from './fields.ts';
export { problemText, type Path, type Problem } from './problems.ts';
export { loadSetupText, readSetup } from './setup-file.ts';
export { editDistance, nearest } from './suggest.ts';
export { readYaml, type YamlText } from './yaml-text.ts';
