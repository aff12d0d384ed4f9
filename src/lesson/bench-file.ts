import { checkYaml, problemText, readYaml, type Problem, type YamlText } from '../diver/file.ts';
import type { BenchLesson, BenchRange, BenchStep } from './bench-lesson.ts';
import type { Lesson } from './lesson.ts';
import { readLesson } from './lesson-file.ts';
import { benchLessonRules } from './bench-rules.ts';
import { benchLessonSchema, type GivenBenchLesson, type GivenBenchStep } from './bench-schema.ts';

/** Whether a file is a lesson for the bench: it says what stands there, and no setup. */
export function isBenchLesson(value: unknown): boolean {
  return typeof value === 'object' && value !== null && 'bench' in value && !('setup' in value);
}

/** Reads a lesson file, to be flown or for the bench: which of them it is, the file says. */
export function readAnyLesson(
  text: string,
): { readonly lesson: Lesson | BenchLesson } | { readonly problems: readonly Problem[] } {
  const yaml = readYaml(text);
  return 'value' in yaml && isBenchLesson(yaml.value) ? benchLessonFrom(yaml) : readLesson(text);
}

/** Reads a lesson file for the bench; as `readLesson` does. */
export function readBenchLesson(
  text: string,
): { readonly lesson: BenchLesson } | { readonly problems: readonly Problem[] } {
  const yaml = readYaml(text);
  return 'value' in yaml ? benchLessonFrom(yaml) : yaml;
}

function benchLessonFrom(yaml: YamlText): ReturnType<typeof readBenchLesson> {
  const checked = checkYaml(benchLessonSchema, yaml);
  const whole = checked.output ? benchLessonRules(checked.output) : [];
  const problems = [...checked.problems, ...whole.map(({ at, ...rest }) => ({ ...yaml.at(at), ...rest }))].sort(
    (a, b) => a.line - b.line,
  );
  return problems.length > 0 || !checked.output ? { problems } : { lesson: completed(checked.output) };
}

/**
 * The lesson of a text that is known to be good, such as a file of our own.
 * @throws {TypeError} with every problem, one a line, when it is not good
 */
export function loadBenchLessonText(text: string): BenchLesson {
  const read = readBenchLesson(text);
  if ('lesson' in read) return read.lesson;
  throw new TypeError(`loadBenchLessonText: the lesson has problems\n${read.problems.map(problemText).join('\n')}`);
}

/** Limits that are open; JSON has no infinity. */
const OPEN = 1e9;

function completed(given: GivenBenchLesson): BenchLesson {
  const { paths, opens, beliefs, values, rightAtLeast, bench, steps, proof } = given;
  const { mode, set = 'putty', water = 'fresh', ...others } = bench;
  return {
    ...given,
    format: 1,
    paths: paths ?? ['self-study'],
    opens: opens ?? 'always',
    beliefs: beliefs ?? [],
    values: values ?? [],
    rightAtLeast: rightAtLeast ?? null,
    bench: { mode, set, water, ...others } as BenchLesson['bench'],
    steps: steps.map(stepOf),
    proof: (proof ?? []).map(({ answers, hands, comes, fault }) => ({
      answers: answers ?? 'right',
      hands: (hands ?? []) as BenchLesson['proof'][number]['hands'],
      comes,
      fault: fault ?? '',
    })),
  };
}

function stepOf(step: GivenBenchStep): BenchStep {
  if (step.kind !== 'try') return step as BenchStep;
  const rangeOf = ({ what, thing, least, most }: (typeof step.each)[number]['all'][number]): BenchRange => ({
    what,
    thing: thing ?? null,
    least: least ?? -OPEN,
    most: most ?? OPEN,
  });
  const each = step.each.map(({ says, forS, all }) => ({ says, forS: forS ?? 0, all: all.map(rangeOf) }));
  return { kind: 'try', id: step.id, title: step.title, hint: step.hint, each };
}
