import { BELIEF_ASKS, HABIT_TRAINING, PART_TRAINING, SAME_PART, type Training } from './exercises.ts';
import type { Lesson } from './lesson.ts';
import type { LessonResult, Mark, PredictionOutcome, ReportWord } from './mark.ts';
import type { Report } from './report.ts';

/** A lesson that is proposed next, and why in one sentence. */
export interface Exercise {
  readonly lessonId: string;
  readonly title: string;
  /** The one that was flown just now. */
  readonly again: boolean;
  readonly reason: string;
}

/** All that a proposal rests on. */
export interface Flown {
  readonly lesson: Lesson;
  readonly result: LessonResult;
  /** What is reported of each mark over its last flights; a mark without one has this flight's word. */
  readonly reports: Readonly<Partial<Record<Mark['id'], Report>>>;
  readonly predictions: readonly PredictionOutcome[];
  /** Ids of lessons that were passed once. */
  readonly passed: ReadonlySet<string>;
  /** Ids of lessons that the instructor opened, or that were flown already. */
  readonly opened: ReadonlySet<string>;
}

/**
 * What to fly next: first what was not flown, then what caps a mark, then what is not yet, then what was not kept, then what was
 * believed, then what is nearly; where nothing is left to say, the next lesson of the path. Never a lesson of the instructor's
 * that was not opened.
 */
export function nextExercise(flown: Flown, lessons: readonly Lesson[]): Exercise {
  const find = (ids: readonly string[]) =>
    ids.flatMap((id) => lessons.filter((one) => one.id === id && mayBegin(one, flown.opened)))[0] ?? null;
  return (
    notFlown(flown) ??
    breathFirst(flown) ??
    ofMark(flown, 'not yet', find) ??
    notKept(flown) ??
    believed(flown, lessons) ??
    ofMark(flown, 'nearly', find) ??
    onward(flown, lessons)
  );
}

type Find = (ids: readonly string[]) => Lesson | null;

const mayBegin = ({ id, opens }: Lesson, opened: ReadonlySet<string>): boolean => opens === 'always' || opened.has(id);

const again = ({ id, title }: Lesson, reason: string): Exercise => ({ lessonId: id, title, again: true, reason });

function notFlown({ lesson, result }: Flown): Exercise | null {
  if (result.missed === null && result.verdict !== 'error') return null;
  return again(lesson, `It was not flown to its end (${result.missed ?? 'it was left'}). Fly the same once more.`);
}

/** What injures comes before what is marked. */
function breathFirst({ lesson, result }: Flown): Exercise | null {
  if (!result.habits.some(({ id }) => id === 'breath-held-while-rising')) return null;
  return again(
    lesson,
    'Breath was held while rising, which comes before all marks. Fly the same once more, and breathe on.',
  );
}

const RANKS: readonly ReportWord[] = ['not yet', 'nearly', 'secure'];

/** By the weakest mark, where it has this word: what cost most, or a habit that was seen, and the lesson that trains it. */
function ofMark({ lesson, result, reports }: Flown, word: ReportWord, find: Find): Exercise | null {
  const reported = (mark: Mark) => reports[mark.id]?.word ?? mark.word;
  const [weakest] = [...result.marks].sort(
    (a, b) => RANKS.indexOf(reported(a)) - RANKS.indexOf(reported(b)) || a.score - b.score,
  );
  if (!weakest || reported(weakest) !== word) return null;
  const training = trainingOf(weakest, result);
  const other = training && find(training.lessons.filter((id) => id !== lesson.id));
  const of = reports[weakest.id]?.of ?? 1;
  const so = `${capital(weakest.id)}: ${word}${of > 1 ? ` over ${of} flights` : ''}${training ? `, because ${training.seen}` : ''}.`;
  const isTrainedHere = training?.lessons[0] === lesson.id;
  // Nearly becomes secure by flying it; a lesson that trains this very thing is flown before another one is proposed.
  if (!training || !other || isTrainedHere || (word === 'nearly' && of < 3))
    return again(lesson, `${so} Fly the same once more.`);
  const { id, title } = other;
  return { lessonId: id, title, again: false, reason: `${so} ${title} trains ${training.trains}.` };
}

function trainingOf(mark: Mark, { habits }: LessonResult): Training | null {
  const habit = habits.filter(({ states }) => states).flatMap(({ id }) => HABIT_TRAINING[id] ?? [])[0];
  const [part] = [...mark.parts].filter(({ pointsLost }) => pointsLost > 0).sort((a, b) => b.pointsLost - a.pointsLost);
  const id = part ? (SAME_PART[part.id] ?? part.id) : '';
  return habit ?? PART_TRAINING[id] ?? PART_TRAINING[`${mark.id}/${id}`] ?? null;
}

function notKept({ lesson, result }: Flown): Exercise | null {
  const unmet = result.demands.find(({ met, id }) => !met && id !== 'predictions');
  return unmet ? again(lesson, `Not met in ${unmet.title}: ${unmet.says}. Fly the same once more.`) : null;
}

/** Where half and more of what was predicted came otherwise: another lesson about the same beliefs. */
function believed({ lesson, result, predictions, passed, opened }: Flown, lessons: readonly Lesson[]): Exercise | null {
  const answered = predictions.filter(({ said }) => said !== null);
  const wrong = answered.filter(({ right }) => !right).length;
  const tooFew = result.demands.find(({ met, id }) => !met && id === 'predictions');
  if (!tooFew && (wrong === 0 || 2 * wrong < answered.length)) return null;
  const shared = (one: Lesson) => one.beliefs.filter((belief) => lesson.beliefs.includes(belief));
  const far = (one: Lesson) => Math.abs(lessons.indexOf(one) - lessons.findIndex(({ id }) => id === lesson.id));
  // Of those that share as much the one that is nearest in the course.
  const [other] = lessons
    .filter((one) => one.id !== lesson.id && !passed.has(one.id) && mayBegin(one, opened) && shared(one).length > 0)
    .sort((a, b) => shared(b).length - shared(a).length || far(a) - far(b));
  if (!other) return tooFew ? again(lesson, `Not met: ${tooFew.says}. Fly the same once more.`) : null;
  const asks = BELIEF_ASKS[shared(other)[0]!];
  const came = `${wrong} of ${answered.length} ${answered.length === 1 ? 'prediction' : 'predictions'} came otherwise`;
  return {
    lessonId: other.id,
    title: other.title,
    again: false,
    reason: `${came}. ${other.title} asks again ${asks}.`,
  };
}

/** The next one of its path that is not passed yet, from this one on and then from the beginning. */
function onward({ lesson, result, passed, opened }: Flown, lessons: readonly Lesson[]): Exercise {
  const at = lessons.findIndex(({ id }) => id === lesson.id);
  const inTurn = [...lessons.slice(at + 1), ...lessons.slice(0, Math.max(0, at))];
  const left = inTurn.filter((one) => one.id !== lesson.id && !passed.has(one.id) && mayBegin(one, opened));
  const next = left.find(({ paths }) => paths.some((path) => lesson.paths.includes(path))) ?? left[0];
  if (!next) return again(lesson, 'Every lesson that is open was passed: this one once more, with fewer gauges.');
  const { id, title } = next;
  const so = result.verdict === 'pass' ? 'All that was asked for was met' : 'It is secure over the last flights';
  return { lessonId: id, title, again: false, reason: `${so}: ${title} comes next.` };
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
