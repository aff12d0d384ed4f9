export { lessonSetup, lessonStart } from './begin.ts';
export { LESSONS } from './catalogue.ts';
export { flyLesson, type FlownLesson } from './fly.ts';
export { judgeLesson } from './judge.ts';
export type {
  AskStep,
  Belief,
  CoursePhase,
  ExplainStep,
  FlyStep,
  Goal,
  Lesson,
  LessonSetup,
  LessonStart,
  Limits,
  MarkId,
  MarkTask,
  Option,
  PredictStep,
  SetupChanges,
  Step,
} from './lesson.ts';
export type { Criterion, Habit, LessonResult, Mark, MarkPart, PredictionOutcome, ReportWord, Verdict } from './mark.ts';
export type { Answer, FlownPhase, LessonBand, LessonRun, LessonView, LockedAnswer, PhaseView, Prompt } from './run.ts';
export type { Topic } from './topics.ts';
export { predictionOutcomes } from './outcomes.ts';
export { advanceLesson, answerPrompt, beginLesson, promptOf } from './runner.ts';
export { debriefQuestion } from './steps.ts';
export { viewLesson } from './view.ts';
export type { Flown } from './trace.ts';
