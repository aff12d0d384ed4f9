export {
  BELIEFS,
  COURSE_PHASES,
  type AskStep,
  type Belief,
  type CoursePhase,
  type ExplainStep,
  type FlyStep,
  type Goal,
  type Lesson,
  type LessonSetup,
  type LessonStart,
  type Limits,
  type MarkId,
  type MarkTask,
  type Option,
  type PredictStep,
  type SetupChanges,
  type Step,
} from './lesson.ts';
export type { Criterion, Habit, LessonResult, Mark, MarkPart, PredictionOutcome, ReportWord, Verdict } from './mark.ts';
export type { Answer, FlownPhase, LessonBand, LessonRun, LessonView, LockedAnswer, PhaseView, Prompt } from './run.ts';
export type { Topic } from './topics.ts';
/*
 * Functions of this room, as they land:
 *   LESSONS: readonly Lesson[]                                             our own lessons, first-dive first
 *   lessonSetup(lesson, ready: Setup): Setup                               the ready setup with the lesson's changes
 *   lessonStart(lesson, rig): Start                                        where its dive begins
 *   divePosture(depthM, before): number                                    pitch in degrees: 90 above 1 m, 0 below
 *   beginLesson(lesson): LessonRun
 *   advanceLesson(lesson, run, recording): LessonRun                       over all new rows, as far as the next prompt
 *   answerPrompt(lesson, run, answer: Answer): LessonRun                   locks it, or goes on after an explanation
 *   viewLesson(lesson, run, recording): LessonView
 *   judgeLesson(lesson, run, dive): LessonResult
 *   predictionOutcomes(lesson, rig, run): PredictionOutcome[]
 *   debriefQuestion(lesson): string
 *   flyLesson(lesson, rig, pilotName, seed): {verdict, marks, habits, events, run, dive}
 */
