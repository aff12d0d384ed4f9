// The door to all that lessons need; fetched when a lesson is wanted, or before, while nothing else is to do.
export { LESSONS, MENU } from '../lesson/index.ts';
export { debriefed } from './debrief-desk.ts';
export { LessonFlight } from './lesson-flight.ts';
export { findLesson, findTaught } from './own-lesson.ts';
export { nextAttempt } from './results.ts';
export { drawWholeRun } from './whole-run.ts';
