import { HEAD_CLEAR_M, HEAD_OUT_M } from '../diver/index.ts';
import type { Recording } from '../dive/index.ts';
import { ROWS_PER_S, windowEndRow, windowRow } from './goal.ts';
import { byHand, handWords } from './hand-words.ts';
import type { MeetGoal } from './condition.ts';
import { GAUGES, type FlyStep, type Gauges, type Lesson } from './lesson.ts';
import type { AskedAbout, Asking, FlownPhase, LessonBand, LessonRun, LessonView, PhaseView } from './run.ts';
import { promptOf } from './runner.ts';
import { flySteps, fromDepthM } from './steps.ts';
import { heldBetween, plain, titleSentence } from './words.ts';

/** All that a page shows of a lesson now. Cheap enough for every frame. */
export function viewLesson(lesson: Lesson, run: LessonRun, recording: Recording): LessonView {
  const prompt = promptOf(lesson, run);
  const done = run.ended !== null;
  // While a question is asked the step to come is the one that is spoken of.
  const step = lesson.steps.slice(run.step).find((next): next is FlyStep => next.kind === 'fly');
  const phase = prompt || done ? undefined : run.phases[run.phases.length - 1];
  return {
    title: done
      ? run.ended === 'late'
        ? missedWords(lesson, run)
        : `${lesson.title}: flown`
      : titleSentence(step!, fromDepthM(lesson, step!.id)),
    progress: phase && step ? progressWords(step, phase, run, recording) : '',
    hint: done || !step ? '' : hintNow(step, phase, run),
    gauges: step ? gaugesOf(step.gauges, run.attempt) : 'all',
    byHand: !done && step !== undefined && byHand(step),
    hands: done || !step ? [] : step.hands,
    bands: bandsOf(lesson, run),
    limits: {
      upMps: step && !done && step.limits.upMpmin !== null ? step.limits.upMpmin / 60 : null,
      downMps: step && !done && step.limits.downMpmin !== null ? step.limits.downMpmin / 60 : null,
    },
    prompt,
    asking: askingOf(lesson, run),
    about: aboutOf(lesson, run),
    phases: flySteps(lesson).map((flown) => phaseView(flown, run)),
    done,
  };
}

/** Predictions are counted from one flight to the next; what is read or watched between them is none. */
function askingOf({ steps }: Lesson, { step, ended }: LessonRun): Asking | null {
  if (ended !== null || steps[step]?.kind !== 'predict') return null;
  const from = steps.slice(0, step).reduce((after, { kind }, i) => (kind === 'fly' ? i + 1 : after), 0);
  const next = steps.findIndex(({ kind }, i) => i > step && kind === 'fly');
  const count = (to: number) => steps.slice(from, to).filter(({ kind }) => kind === 'predict').length;
  return { at: count(step + 1), of: count(next < 0 ? steps.length : next) };
}

function aboutOf({ steps }: Lesson, { step, ended }: LessonRun): AskedAbout | null {
  const asked = ended === null ? steps[step] : undefined;
  return asked?.kind === 'predict' ? { atM: asked.atM ?? null, speedMpmin: asked.speedMpmin ?? null } : null;
}

/** What was not reached in its time, as a sentence. */
export function missedWords(lesson: Lesson, run: LessonRun): string {
  const last = run.phases[run.phases.length - 1];
  const step = flySteps(lesson).find(({ id }) => id === last?.id);
  if (!step) return '';
  const { goal } = step;
  if (goal.kind === 'float') return `${step.title}: the head was not clear of the water in ${plain(goal.withinS)} s`;
  if (goal.kind === 'travel') return `${step.title}: ${plain(goal.toM)} m was not reached in ${plain(goal.withinS)} s`;
  if (goal.kind === 'meet') return `${step.title}: not in ${plain(goal.withinS)} s: ${goal.says}`;
  return `${step.title}: ${plain(goal.atM)} m was not reached`;
}

function progressWords(step: FlyStep, phase: FlownPhase, run: LessonRun, recording: Recording): string {
  const { goal } = step;
  const last = run.nextRow - 1;
  const seconds = (rows: number) => Math.max(0, Math.floor(rows / ROWS_PER_S));
  if (goal.kind === 'float') return phase.reachedRow === null ? '' : `${seconds(last - phase.reachedRow)} s so far`;
  if (goal.kind === 'travel') return `${seconds(last - phase.fromRow)} of ${plain(goal.withinS)} s`;
  if (goal.kind === 'meet') {
    const met = metWords(goal, phase, last);
    return byHand(step) && last >= 0 ? `${handWords(step, phase, recording, last)}; ${met}` : met;
  }
  if (phase.reachedRow === null) return '';
  const opens = windowRow(goal, phase.reachedRow);
  if (last < opens) return `counting begins in ${Math.ceil((opens - last) / ROWS_PER_S)} s`;
  let held = 0;
  for (let row = opens; row <= last; row++) if (Math.abs(recording.at(row, 'depthM') - goal.atM) <= goal.bandM) held++;
  return `${seconds(held)} s so far`;
}

/** Seconds that a condition has been kept, and how many are met. */
function metWords(goal: MeetGoal, { each }: FlownPhase, lastRow: number): string {
  const met = each.filter(({ metRow }) => metRow !== null).length;
  const under = each.findIndex(({ sinceRow, metRow }) => sinceRow !== null && metRow === null);
  const condition = goal.each[under];
  const since = each[under]?.sinceRow ?? lastRow;
  const seconds =
    condition?.do === 'hold' ? `${Math.floor((lastRow - since) / ROWS_PER_S)} of ${plain(condition.forS)} s` : '';
  if (goal.each.length === 1) return seconds;
  return `${met} of ${goal.each.length} done${seconds ? `, ${seconds}` : ''}`;
}

/** A hint is there at once the first time, after a while the second, and later not at all. */
const HINT_AFTER_S = 20;

function hintNow(step: FlyStep, phase: FlownPhase | undefined, run: LessonRun): string {
  if (run.attempt <= 1 || !phase) return run.attempt <= 2 ? step.hint : '';
  const waited = run.nextRow - phase.fromRow >= HINT_AFTER_S * ROWS_PER_S;
  return run.attempt === 2 && waited ? step.hint : '';
}

/** Gauges fade over attempts: what the step shows, then the rate alone, then none. */
function gaugesOf(gauges: Gauges, attempt: number): Gauges {
  const faded = Math.min(GAUGES.indexOf(gauges) + Math.max(0, attempt - 2), GAUGES.length - 1);
  return GAUGES[faded] ?? gauges;
}

/** Places to be: those that were, the one that is, and on the way to one the earliest moment that the limit allows. */
function bandsOf(lesson: Lesson, run: LessonRun): LessonBand[] {
  const bands: LessonBand[] = [];
  for (const phase of run.phases) {
    const step = flySteps(lesson).find(({ id }) => id === phase.id)!;
    const { goal, limits } = step;
    const fromS = phase.fromRow / ROWS_PER_S;
    const toS = phase.toRow === null ? null : phase.toRow / ROWS_PER_S;
    if (goal.kind === 'float') {
      const begins = phase.reachedRow === null ? fromS : phase.reachedRow / ROWS_PER_S;
      bands.push({ fromS: begins, toS, topM: 0, bottomM: HEAD_CLEAR_M, words: 'head clear' });
      continue;
    }
    if (goal.kind === 'meet') {
      bands.push(...depthBands(goal, fromS, toS));
      continue;
    }
    const atM = goal.kind === 'travel' ? goal.toM : goal.atM;
    const place = { topM: atM - goal.bandM, bottomM: atM + goal.bandM };
    if (goal.kind === 'travel') {
      if (phase.toRow !== null) continue;
      const before = fromDepthM(lesson, step.id);
      const mpmin = atM > before ? limits.downMpmin : limits.upMpmin;
      const earliest = mpmin === null ? 0 : ((Math.abs(atM - before) - goal.bandM) / mpmin) * 60;
      bands.push({ fromS: fromS + Math.max(0, earliest), toS: null, ...place, words: `${plain(atM)} m` });
      continue;
    }
    const ends = phase.reachedRow === null ? null : windowEndRow(goal, phase.reachedRow) / ROWS_PER_S;
    const held = heldBetween(goal, step.keep);
    const words = `stay between ${plain(held.topM)} and ${plain(held.bottomM)} m`;
    bands.push({ fromS, toS: toS ?? ends, ...held, words });
  }
  return bands;
}

/** A band that is open downward is drawn down to here, metres: deeper than any water of ours. */
const DEEPEST_M = 200;

/** Depths that the conditions of a goal ask for. */
function depthBands(goal: MeetGoal, fromS: number, toS: number | null): LessonBand[] {
  return goal.each.flatMap(({ what, least, most }) => {
    if (what !== 'depthM') return [];
    const [topM, bottomM] = [Math.max(0, least), Math.min(most, DEEPEST_M)];
    const open = most > DEEPEST_M;
    // The depth of the chest says nothing to whoever floats.
    if (topM === 0 && bottomM <= HEAD_OUT_M) return [{ fromS, toS, topM, bottomM, words: 'float this high' }];
    const words = open ? `below ${plain(topM)} m` : `${plain(topM)} to ${plain(bottomM)} m`;
    return [{ fromS, toS, topM, bottomM, words }];
  });
}

function phaseView(step: FlyStep, run: LessonRun): PhaseView {
  const phase = run.phases.find(({ id }) => id === step.id);
  const { id, title } = step;
  if (!phase) return { id, title, state: run.ended === null ? 'ahead' : 'missed', fromS: null, toS: null };
  const fromS = phase.fromRow / ROWS_PER_S;
  if (phase.toRow === null) return { id, title, state: 'now', fromS, toS: null };
  return {
    id,
    title,
    state: phase.met && phase.broken.length === 0 ? 'met' : 'missed',
    fromS,
    toS: phase.toRow / ROWS_PER_S,
  };
}
