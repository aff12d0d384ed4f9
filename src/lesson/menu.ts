import { BENCH_LESSONS } from './bench-catalogue.ts';
import type { BenchLesson } from './bench-lesson.ts';
import { LESSONS } from './catalogue.ts';
import { COURSE_PHASES, type Lesson } from './lesson.ts';

/** All our own lessons by the parts of the course, flown ones and those at the bench. */
export const MENU: readonly (Lesson | BenchLesson)[] = COURSE_PHASES.flatMap((phase) =>
  [...LESSONS, ...BENCH_LESSONS].filter((lesson) => lesson.phase === phase),
);
