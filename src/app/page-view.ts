import type { Problem, ReadySetup } from '../diver/index.ts';
import type { Asking, Demonstrator, Gauges, Prompt } from '../lesson/index.ts';
import {
  USUAL_SETTINGS,
  type BenchView,
  type CaptionView,
  type Debrief,
  type DeckView,
  type KeptView,
  type KitView,
  type LearnView,
  type LessonCard,
  type LooksView,
  type PairView,
  type PresentingView,
  type Readings,
  type Settings,
  type TimeView,
  type TracesView,
} from '../panels/index.ts';

/** Which place of the program is shown. `start`: nothing was pressed yet. */
export type Place = 'start' | 'fly' | 'learn' | 'lesson' | 'debrief' | 'kit' | 'bench';

/** Whether a place covers the water: nothing is flown or drawn there. */
export function coversWater(place: Place): boolean {
  return place === 'kit' || place === 'bench';
}

/** All that the page shows beside the stage. Plain data: the page is a function of it. */
export interface PageView {
  readonly place: Place;
  readonly settings: Settings;
  readonly projector: boolean;
  readonly words: string;
  readonly progress: string;
  readonly hint: string;
  readonly frozen: boolean;
  readonly speed: number;
  /** Whether a dive is there; before that the stage is still being fetched. */
  readonly ready: boolean;
  readonly setups: readonly ReadySetup[];
  readonly setupId: string;
  readonly readings: Readings | null;
  /** What a lesson shows of them. */
  readonly gauges: Gauges;
  /** False while a lesson asks about a diver as its words have him: what this one weighs is not said then. */
  readonly weighed: boolean;
  /** What is asked, or was watched, is another moment than the one in the water: none of its numbers stands there. */
  readonly elsewhere: boolean;
  readonly deck: DeckView | null;
  readonly breathing: 'automatic' | 'direct' | 'held' | null;
  readonly valveHPa: number | null;
  readonly prompt: Prompt | null;
  /** Which of a lesson's predictions is asked. */
  readonly asking: Asking | null;
  readonly lessons: readonly LessonCard[];
  /** What the place of the lessons adds to them; null until it was fetched. */
  readonly learn: LearnView | null;
  /** A simulated diver who flies the lesson in hand; null: the person does. */
  readonly flownBy: Demonstrator | null;
  readonly debrief: Debrief | null;
  readonly shownAtS: number | null;
  readonly kit: KitView | null;
  readonly bench: BenchView | null;
  /** Null until the looks over the water were fetched. */
  readonly looks: LooksView | null;
  /** Null until presenting was fetched. */
  readonly presenting: PresentingView | null;
  /** Null while the traces are closed. */
  readonly traces: TracesView | null;
  /** Null until keeping dives was fetched. */
  readonly kept: KeptView | null;
  /** Null until a second diver was asked for. */
  readonly pair: PairView | null;
  /** Null while the strip of time is away. */
  readonly time: TimeView | null;
  /** Null unless captions are wanted. */
  readonly captions: CaptionView | null;
  readonly moreOpen: boolean;
  /** Something that went wrong, in words, with the problems of a file. */
  readonly trouble: string;
  readonly problems: readonly Problem[];
  /** What the chosen diver and water add to the footer: other worlds, the closed loop. */
  readonly cautions: readonly string[];
  /** For those who hear the page. */
  readonly spoken: string;
}

/** Whether time stands: frozen, asked, or under something that is read; before a class the menu of looks lies over a dive that goes on. */
export function timeStands({ frozen, moreOpen, prompt, looks, projector }: PageView): boolean {
  return frozen || moreOpen || prompt !== null || ((looks?.menuOpen ?? false) && !projector);
}

/** What the first screen shows before anything was fetched. */
export const FIRST_VIEW: PageView = {
  place: 'start',
  settings: USUAL_SETTINGS,
  projector: false,
  words: 'Let gas out and breathe out. What happens?',
  progress: '',
  hint: '',
  frozen: false,
  speed: 1,
  ready: false,
  setups: [],
  setupId: '',
  readings: null,
  gauges: 'all',
  weighed: true,
  elsewhere: false,
  deck: null,
  breathing: null,
  valveHPa: null,
  prompt: null,
  asking: null,
  lessons: [],
  learn: null,
  flownBy: null,
  debrief: null,
  shownAtS: null,
  kit: null,
  bench: null,
  looks: null,
  presenting: null,
  traces: null,
  kept: null,
  pair: null,
  time: null,
  captions: null,
  moreOpen: false,
  trouble: '',
  problems: [],
  cautions: [],
  spoken: '',
};
