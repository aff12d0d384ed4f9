import * as v from 'valibot';
import { shown, type Path, type Problem } from './problems.ts';
import { strangers } from './strange-keys.ts';
import type { YamlText } from './yaml-text.ts';

/** What came of holding a YAML text against a schema. */
export interface CheckedYaml<Schema extends v.GenericSchema> {
  readonly problems: readonly Problem[];
  /** Absent when there are problems. */
  readonly output?: v.InferOutput<Schema>;
  /** Paths of all that is wrong, and of what strange keys were probably meant to be. */
  readonly wrong: readonly Path[];
}

/**
 * Holds a YAML text against a schema made of the fields of fields.ts: keys given twice, strange keys, wrong types and
 * values out of range, all together and in the order of the file.
 */
export function checkYaml<Schema extends v.GenericSchema>(schema: Schema, yaml: YamlText): CheckedYaml<Schema> {
  const strange = strangers(schema, yaml.value);
  const checked = v.safeParse(schema, yaml.value);
  // Of strange keys the validator names only the first in a group; they are all in the list above.
  const issues = (checked.issues ?? []).filter((issue) => issue.expected !== 'never');
  const problems = [
    ...yaml.problems,
    ...strange.map(({ path, found, allowed, suggestion }) => ({ ...yaml.at(path), found, allowed, suggestion })),
    ...issues.map((issue) => issueProblem(issue, yaml)),
  ].sort((a, b) => a.line - b.line);
  const wrong = [...strange.flatMap(({ path, meant }) => (meant ? [path, meant] : [path])), ...issues.map(pathOf)];
  return checked.success && problems.length === 0 ? { problems, wrong, output: checked.output } : { problems, wrong };
}

function issueProblem(issue: v.BaseIssue<unknown>, yaml: YamlText): Problem {
  const [allowed, suggestion = ''] = issue.message.split('\n');
  return { ...yaml.at(pathOf(issue)), found: shown(issue.input), allowed, suggestion };
}

function pathOf(issue: v.BaseIssue<unknown>): Path {
  return (issue.path ?? []).map((item) => item.key as string | number);
}
