import { TICKS_PER_S, type Moment } from '../dive/index.ts';
import type { LessonView } from '../lesson/index.ts';
import type { StageView } from '../stage/index.ts';
import { DOWN_MPS, UP_MPS } from './rates.ts';

/** What of the page the picture depends on. */
export interface PictureOf {
  readonly dive: Moment;
  readonly depthM: number;
  readonly nowS: number;
  readonly forecastM: readonly number[] | null;
  readonly lesson: LessonView | null;
  readonly limitsBefore: StageView['limitsBefore'];
  readonly goal: 'float' | 'travel' | 'hold' | null;
  readonly frozen: boolean;
  /** Something is asked, or a lesson hides gauges: nothing is measured in the picture. */
  readonly bare: boolean;
  readonly afloat: boolean;
  /** Moments that the debrief speaks of, seconds, in the order of their numbers. */
  readonly moments: readonly number[];
  readonly heightPx: number;
  readonly projector: boolean;
  readonly reducedMotion: boolean;
  readonly theme: 'light' | 'dark';
  /** The line stays blank ahead, as before the first press and while something is asked. */
  readonly first: boolean;
}

/** Metres of water shown: a hover close by, a way down or up with room for the way. */
const SHOWN_M = { float: 5.5, travel: 8.5, hold: 5.5, free: 7 };

/** From this scale on, pixels a metre, the diver is large enough at his true size; and the least water that says anything. */
const TRUE_SIZE_PX = 51;
const LEAST_SHOWN_M = 4;

/** One frame for the stage. */
export function pictureOf(of: PictureOf): StageView {
  const { dive, lesson } = of;
  return {
    rig: dive.rig,
    state: dive.state,
    depthM: of.depthM,
    nowS: of.nowS,
    controls: dive.controls,
    recording: dive.recording,
    changes: dive.changes,
    events: dive.events,
    forecastM: of.forecastM,
    bands: lesson?.bands ?? [],
    rings: of.moments.map((atS, i) => ({ atS, number: i + 1 })),
    limits: lesson ? lesson.limits : { upMps: UP_MPS, downMps: DOWN_MPS },
    ...(of.limitsBefore ? { limitsBefore: of.limitsBefore } : {}),
    limitTaught: false,
    frozen: of.frozen,
    metresShown: shownM(of),
    forceArrow: !of.first && !of.bare && !of.afloat,
    projector: of.projector,
    reducedMotion: of.reducedMotion,
    theme: of.theme,
    ...(of.first ? { forecastWords: '' } : {}),
    ...(onLine(dive) ? { forecastWords: 'if you hold on' } : {}),
  };
}

/** Whether a hand is on a line that is there. */
const onLine = ({ rig, controls }: Moment): boolean => rig.line && controls.holdLine === 1;

/** As much water as the goal wants, less on a small screen: there the diver would have to be drawn larger than he is. */
function shownM({ goal, first, heightPx }: PictureOf): number {
  const wanted = SHOWN_M[goal ?? (first ? 'float' : 'free')];
  return Math.max(Math.min(wanted, heightPx / TRUE_SIZE_PX), LEAST_SHOWN_M);
}

/** The same of a moment that is looked back at, standing still: the line ends there. */
export function pictureBack(of: PictureOf): StageView {
  return { ...pictureOf(of), nowS: of.dive.tick / TICKS_PER_S, frozen: true, forecastM: null };
}
