export { lessonSetup, lessonStart } from './begin.ts';
export { BENCH_LESSONS } from './bench-catalogue.ts';
export { LESSONS } from './catalogue.ts';
export { MENU } from './menu.ts';
export { flownUnder } from './flown-under.ts';
export { flyLesson, taskOf, flyingLesson, type FlownLesson } from './fly.ts';
export { judgeLesson } from './judge.ts';
export { lineEvidence, type FinStretch, type FlownTask, type HeldPlace, type LineEvidence } from './line-evidence.ts';
export type { RateGap } from './rate-gaps.ts';
export type {
  AskStep,
  Belief,
  CoursePath,
  CoursePhase,
  ExplainStep,
  FlyStep,
  Gauges,
  HandNeeded,
  Goal,
  Lesson,
  LessonSetup,
  LessonStart,
  Limits,
  MarkId,
  MarkTask,
  SetupChanges,
  Step,
} from './lesson.ts';
export type {
  Criterion,
  Habit,
  LessonResult,
  Mark,
  MarkPart,
  PredictionOutcome,
  ReportWord,
  StepDemand,
  Verdict,
} from './mark.ts';
export type {
  Answer,
  AskedAbout,
  Asking,
  FlownPhase,
  LessonBand,
  LessonRun,
  LessonView,
  LockedAnswer,
  PhaseView,
  Prompt,
  PromptScale,
} from './run.ts';
export type { Option, PredictStep } from './predict.ts';
export type { Topic } from './topics.ts';
export { predictionDemand, withPredictions } from './demands.ts';
export { asExpected, flights, type Flights } from './prove.ts';
export { FAN_DOTS, fanOf, letterOf, mirroredEnds, rankedEnds, type FanLine, type Leads } from './fan.ts';
export { foreseen, type Foreseen } from './foreseen.ts';
export { shownNumber, type ShownNumber } from './shown-number.ts';
export { saidInWater, saidWords, type SaidInWater } from './said.ts';
export { predictionOutcomes } from './outcomes.ts';
export { advanceLesson, answerPrompt, beginLesson, promptOf, retried } from './runner.ts';
export { acceptance, markRanges, type Demanded, type MarkRange } from './acceptance.ts';
export { HABIT_KINDS, type HabitId } from './habit-kinds.ts';
export { habitsTable, type HabitRates } from './habits-table.ts';
export { LIMIT_RANGES, USUAL_LIMITS, markLimits, type LessonLimits, type MarkLimits } from './limits.ts';
export { limitsInForce, type LimitInForce } from './limits-said.ts';
export { nextExercise, type Exercise } from './next-exercise.ts';
export { minutesOf, pathsThrough, type LessonPath, type PathStep } from './paths.ts';
export { knownOf, nextOf, type Known, type KnownFlight } from './known.ts';
export { demonstrates, demonstratorDoes, demonstratorOf, type Demonstrator } from './demonstrator.ts';
export { gapWords, offWords, outsideWords, taskWords, toldGaps } from './line-words.ts';
export { reportOf, type Report } from './report.ts';
export { hashOfText } from './text-hash.ts';

/** The tables of how marks and habits were tried, fetched when somebody looks at them. */
export const fetchTried = async () => (await import('./tried.ts')).TRIED;
export { flyCell, joinedTrials, type TrialResult } from './trial-flights.ts';
export { TRIAL_CELLS, TRIAL_TASKS, type TrialCell, type TrialTask } from './trials.ts';
export { begunSteps, debriefQuestion } from './steps.ts';
export { meddled } from './happening.ts';
export { watchedDive, type Frame } from './watched.ts';
export type { Flyer, Proof, ScriptChange, WatchStep } from './watch.ts';
export { viewLesson } from './view.ts';
export type { Flown } from './trace.ts';
