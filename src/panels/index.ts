import './gas-bars.ts';
import './lane-numbers.ts';
import './practice-deck.ts';
import './problem-list.ts';
import './start-note.ts';
import './title-bar.ts';

export type { QuestionSheet } from './question-sheet.ts';
export { ACTS, actWords, isHeld, type Act } from './acts.ts';
export type { BenchLessonView, BenchView, BenchWish } from './bench-view.ts';
export type { CaptionView } from './caption-view.ts';
export { CAUTION } from './cautions.ts';
export { swapped, usualPlace, type KeyRow, type MovedKeys } from './key-places.ts';
export type { CompareChoice, CompareView, Debrief, DebriefAsk, DebriefKnown, EarlierFlight } from './debrief-view.ts';
export { writtenAddingUp } from './adding-up.ts';
export type { KeptAsk, KeptNote, KeptView } from './kept-view.ts';
export type { KitAsk, KitDepth, KitDiver, KitFigure, KitHead, KitHover, KitRow, KitView } from './kit-view.ts';
export type { LearnAsk, LearnView, LessonCard, OwnLesson, PathStop, TriedView } from './learn-view.ts';
export type { Across, HillView, Look, LookChoice, LookToggle, LooksView, PartRow } from './looks.ts';
export type { DeckView } from './practice-deck.ts';
export type { PairAsk, PairGroup, PairSide, PairView } from './pair-view.ts';
export type { PadView, PresentAsk, PresentingView, ShowCard, StripView } from './presenting-view.ts';
export { saidSumKg, spoken, type GasStore, type Pull, type Pulls, type Readings } from './readings.ts';
export { SPEEDS } from './title-bar.ts';
export { USUAL_SETTINGS, type Settings } from './settings.ts';
export type { MishapAsk } from './mishap-kinds.ts';
export type { LineView, TimeAsk, TimeView } from './time-view.ts';
export type { TraceId } from './trace-kinds.ts';
export type { TraceAsk, TracesView } from './trace-view.ts';
export { STILL_MPS, pullKg } from './units.ts';
export { WishEvent, type Wish } from './wish.ts';

/** Fetches the panels that lie on the page for a while: *more*, questions, lessons, the debrief. Until then their elements show nothing. */
export const fetchSheets = (): Promise<unknown> => import('./sheets.ts');

/** Fetches the panels of *Kit and water*. */
export const fetchKit = (): Promise<unknown> => import('./kit-sheet.ts');

/** Fetches the panels and words of the bench. */
export const fetchBench = () => import('./bench-door.ts');

/** Fetches the line of captions. */
export const fetchCaptions = (): Promise<unknown> => import('./caption-line.ts');

/** Fetches the panels of presenting. */
export const fetchPresenting = (): Promise<unknown> => import('./presenting-door.ts');

/** Fetches the panel of the traces, its plot with it. */
export const fetchTraces = () => import('./trace-door.ts');

/** Fetches the panels of kept dives. */
export const fetchKept = () => import('./kept-door.ts');
/** Fetches the strip of two divers, and their words. */
export const fetchPair = () => import('./pair-door.ts');
/** Fetches the strip of time. */
export const fetchTime = (): Promise<unknown> => import('./time-strip.ts');

/** Fetches the panels and words of the looks over the water. */
export const fetchLooks = () => import('./look-door.ts');
