import type { Keep, MeetGoal } from './condition.ts';
import type { LessonEvent } from './happening.ts';
import type { LessonLimits } from './limits.ts';
import type { PredictStep } from './predict.ts';
import type { LessonStart } from './start.ts';
import type { Proof, WatchStep } from './watch.ts';

export type { LessonStart } from './start.ts';

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
  /** Where it is used: a short demonstration, an hour of theory, or alone. */
  readonly paths: readonly CoursePath[];
  /** instructor: shown first, and flown once the instructor has opened it. */
  readonly opens: 'always' | 'instructor';
  /** Beliefs that it probes. */
  readonly beliefs: readonly Belief[];
  readonly objective: string;
  readonly caution: string;
  /** Values in force, in words with their unit, each with why it is that one. */
  readonly values: readonly { readonly value: string; readonly why: string }[];
  readonly setup: LessonSetup;
  readonly start: LessonStart;
  readonly steps: readonly Step[];
  readonly marks: readonly MarkTask[];
  /** What its marks ask for otherwise than usual; null: nothing. */
  readonly markLimits: LessonLimits;
  /** So many of the predictions that were answered must be right; null where none must. */
  readonly rightAtLeast: number | null;
  /** Who passes and who fails, held by a test. */
  readonly proof: readonly Proof[];
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

/** Ways through the lessons. */
export const COURSE_PATHS = ['demonstration', 'theory', 'self-study'] as const;
export type CoursePath = (typeof COURSE_PATHS)[number];

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
  /** All lead on the belt in pieces of so much that come off one by one; what is left over is fixed on the back. */
  readonly leadPieceKg?: number;
  /** Gauge, of every cylinder. */
  readonly fillBar?: number;
  readonly suitThicknessMm?: number;
  readonly salinityPsu?: number;
  readonly temperatureC?: number;
  readonly bottomM?: number;
}

export type Step = ExplainStep | PredictStep | WatchStep | FlyStep | AskStep;

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
  /** What is asked instead of whoever has only watched: about what was to be seen. */
  readonly watched?: string | undefined;
}

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
  /** What must hold from its first row to its last; a break is told and the flying goes on. */
  readonly keep: readonly Keep[];
  /** What goes wrong in it. */
  readonly events: readonly LessonEvent[];
  readonly gauges: Gauges;
  /** What it is flown with besides gas, breath and fins. */
  readonly hands: readonly HandNeeded[];
}

/** What a step may be flown with besides gas, breath and fins: a narrow screen keeps it in sight then. */
export const HANDS_NEEDED = ['line', 'lead', 'attitude'] as const;
export type HandNeeded = (typeof HANDS_NEEDED)[number];

/** Gauges that are shown: all, the rate alone, none. */
export const GAUGES = ['all', 'rate', 'none'] as const;
export type Gauges = (typeof GAUGES)[number];

export interface Limits {
  readonly upMpmin: number | null;
  readonly downMpmin: number | null;
}

/** What ends a phase. */
export type Goal = FloatGoal | TravelGoal | HoldGoal | MeetGoal;

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
