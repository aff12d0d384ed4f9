import type { Topic } from './topics.ts';

/**
 * A lesson as its file gives it, with nothing left out. Units as people write them, each in the key's name: metres, seconds,
 * metres a minute, litres, kilograms.
 */
export interface Lesson {
  readonly format: 1;
  readonly id: string;
  readonly title: string;
  readonly minutes: number;
  /** Where in the course it belongs. */
  readonly phase: CoursePhase;
  /** Beliefs that it probes. */
  readonly beliefs: readonly Belief[];
  readonly objective: string;
  readonly caution: string;
  readonly setup: LessonSetup;
  readonly start: LessonStart;
  readonly steps: readonly Step[];
  readonly marks: readonly MarkTask[];
  /** What no screen can give: shown after the lesson. */
  readonly waterAdds: string;
}

/** Parts of the course, in their order. */
export const COURSE_PHASES = [
  'first-dive',
  'bench',
  'three-phases',
  'weighting',
  'under-control',
  'when-it-goes-wrong',
  'limits',
] as const;
export type CoursePhase = (typeof COURSE_PHASES)[number];

/** What students believe before the lesson. @source Loverude, Kautz & Heron 2003 (Am. J. Phys. 71:1178); Besson 2004; Kiray et al. 2015; recalled */
export const BELIEFS = [
  'heavy-sinks',
  'shape-floats',
  'more-water',
  'finds-its-level',
  'pressed-down',
  'neutral-place',
  'neutral-holds',
  'linear-gas',
  'lead-is-safe',
  'jacket-lifts',
  'breath-now',
  'level-is-neutral',
  'suit-constant',
  'breath-always',
  'my-number',
] as const;
export type Belief = (typeof BELIEFS)[number];

/** One of our ready setups and what is different from it. */
export interface LessonSetup {
  readonly ready: string;
  readonly changes: SetupChanges;
}

/** What a lesson may change in a ready setup; what is left out stays. */
export interface SetupChanges {
  /** Added to the last piece of lead; below 0 takes from it. */
  readonly moreLeadKg?: number;
  /** Gauge, of every cylinder. */
  readonly fillBar?: number;
  readonly suitThicknessMm?: number;
  readonly salinityPsu?: number;
  readonly temperatureC?: number;
  readonly bottomM?: number;
}

/** Afloat upright with so much gas in the jacket, or at a depth, level and at rest. */
export type LessonStart =
  | { readonly place: 'afloat'; readonly jacketL: number }
  | { readonly place: 'under'; readonly depthM: number; readonly jacketL: number };

export type Step = ExplainStep | PredictStep | FlyStep | AskStep;

/** Something said before flying goes on. */
export interface ExplainStep {
  readonly kind: 'explain';
  readonly id: string;
  readonly title: string;
  readonly text: string;
}

/** A debrief question, asked once everything is flown; nobody marks the answer. */
export interface AskStep {
  readonly kind: 'ask';
  readonly id: string;
  readonly question: string;
}

export interface Option {
  readonly id: string;
  readonly words: string;
}

interface PredictBase {
  readonly kind: 'predict';
  readonly id: string;
  readonly question: string;
  /** Why it is so, shown with the answer. */
  readonly why: string;
}

/** A prediction about a topic that the model computes from the lesson's own setup. */
interface Computed {
  readonly topic: Topic;
  /** Depth that the topic is asked at, and the one it leads to. */
  readonly atM?: number;
  readonly toM?: number;
}

/** A choice among plain buttons; option ids are the outcomes of the topic. Only what no topic covers has its answer typed in. */
export interface PredictChoice extends PredictBase, Partial<Computed> {
  readonly shape: 'choice';
  readonly options: readonly Option[];
  readonly answer?: string;
}

/** A number on a scale of equal steps; right within `within` of the computed one. */
export interface PredictNumber extends PredictBase, Computed {
  readonly shape: 'number';
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly within: number;
}

/** Items to be put in order, the greatest first; item ids are what the topic orders. */
export interface PredictOrder extends PredictBase, Computed {
  readonly shape: 'order';
  readonly items: readonly Option[];
}

export type PredictStep = PredictChoice | PredictNumber | PredictOrder;

/** One phase that is flown. */
export interface FlyStep {
  readonly kind: 'fly';
  readonly id: string;
  /** One or two words: Neutral. */
  readonly title: string;
  readonly hint: string;
  readonly goal: Goal;
  /** Rates in force, metres a minute; null for none. */
  readonly limits: Limits;
}

export interface Limits {
  readonly upMpmin: number | null;
  readonly downMpmin: number | null;
}

/** What ends a phase. */
export type Goal = FloatGoal | TravelGoal | HoldGoal;

/** Positive at the surface, the head clear of the water for so long; begun within the limit. */
export interface FloatGoal {
  readonly kind: 'float';
  readonly forS: number;
  readonly withinS: number;
}

/** Comes within the band about a depth. */
export interface TravelGoal {
  readonly kind: 'travel';
  readonly toM: number;
  readonly bandM: number;
  readonly withinS: number;
}

/** Stays: the window opens `settleS` after the depth is reached and has a fixed length. */
export interface HoldGoal {
  readonly kind: 'hold';
  readonly atM: number;
  readonly bandM: number;
  readonly settleS: number;
  readonly forS: number;
}

/** Which flown steps a mark looks at, by their ids. */
export type MarkTask =
  | { readonly mark: 'descent'; readonly travel: string; readonly hold: string; readonly fastAscentIsThePoint: boolean }
  | { readonly mark: 'hover'; readonly hold: string; readonly fastAscentIsThePoint: boolean }
  | {
      readonly mark: 'ascent';
      readonly travel: string;
      readonly hold: string;
      readonly surface: string;
      readonly fastAscentIsThePoint: boolean;
    };
export type MarkId = MarkTask['mark'];
