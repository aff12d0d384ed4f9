import { checkYaml, problemText, readYaml, type Path, type Problem, type YamlText } from '../diver/file.ts';
import { completed } from './completed.ts';
import type { Lesson } from './lesson.ts';
import { lessonRules } from './lesson-rules.ts';
import { lessonSchema, type GivenPredict } from './lesson-schema.ts';
import { predictRules } from './predict-rules.ts';

/**
 * Reads a lesson file: YAML of the keys of lesson-schema.ts. All problems come together, in the order of the file; there is at
 * least one when there is no lesson. Never throws, whatever the text.
 */
export function readLesson(text: string): { readonly lesson: Lesson } | { readonly problems: readonly Problem[] } {
  const yaml = readYaml(text);
  if (!('value' in yaml)) return yaml;
  const checked = checkYaml(lessonSchema, yaml);
  const whole = checked.output ? lessonRules(checked.output) : [];
  const problems = [
    ...checked.problems,
    ...predictProblems(yaml, checked.wrong),
    ...whole.map(({ at, ...rest }) => ({ ...yaml.at(at), ...rest })),
  ].sort((a, b) => a.line - b.line);
  return problems.length > 0 || !checked.output ? { problems } : { lesson: completed(checked.output) };
}

/**
 * The lesson of a text that is known to be good, such as a file of our own.
 * @throws {TypeError} with every problem, one a line, when it is not good
 */
export function loadLessonText(text: string): Lesson {
  const read = readLesson(text);
  if ('lesson' in read) return read.lesson;
  throw new TypeError(`loadLessonText: the lesson has problems\n${read.problems.map(problemText).join('\n')}`);
}

/** Rules of every prediction that is sound key by key, whatever is wrong elsewhere in the file. */
function predictProblems(yaml: YamlText, wrong: readonly Path[]): Problem[] {
  const steps = (yaml.value as { steps?: unknown } | null)?.steps;
  if (!Array.isArray(steps)) return [];
  return steps.flatMap((step: unknown, i) => {
    const isPredict = typeof step === 'object' && step !== null && (step as { kind?: unknown }).kind === 'predict';
    const unsound = wrong.some((path) => (path[0] ?? 'steps') === 'steps' && (path[1] ?? i) === i);
    if (!isPredict || unsound) return [];
    return predictRules(step as GivenPredict).map(({ key, ...rest }) => ({ ...yaml.at(['steps', i, key]), ...rest }));
  });
}
