import { parseDocument } from 'yaml';

/**
 * The source of a JavaScript module whose default export is what a YAML file says.
 * @param {string} text the file
 * @param {string} file its name, for the message
 * @returns {string} plain data only: the program never sees YAML syntax
 * @throws {SyntaxError} naming every problem with its line, warnings included
 */
export function moduleOfYaml(text, file) {
  const document = parseDocument(text, { prettyErrors: true, strict: true });
  const problems = [...document.errors, ...document.warnings];
  if (problems.length > 0) {
    throw new SyntaxError(problems.map((problem) => `${file}: ${problem.message}`).join('\n'));
  }
  return `export default ${JSON.stringify(document.toJS() ?? null)};\n`;
}
