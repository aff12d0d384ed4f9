import firstDive from '../../lessons/first-dive.yaml';
import type { Lesson } from './lesson.ts';

/** Our own lessons in the order of the menu. Their files are complete and held against the reader by a test. */
export const LESSONS: readonly Lesson[] = [firstDive as Lesson];
