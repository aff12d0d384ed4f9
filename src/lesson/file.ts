/*
 * The second public door of this room: reading lesson files. It carries the YAML reader and the validator, which the first load
 * of the page does without.
 */
export { loadLessonText, readLesson } from './lesson-file.ts';
export { lessonSchema } from './lesson-schema.ts';
export { isBenchLesson, loadBenchLessonText, readAnyLesson, readBenchLesson } from './bench-file.ts';
export { benchLessonSchema } from './bench-schema.ts';
