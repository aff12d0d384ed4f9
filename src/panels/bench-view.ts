import type { BenchAsk, DeepView, TankView } from '../bench/index.ts';
import type { PredictionOutcome, Prompt, StepDemand } from '../lesson/index.ts';

/** What the bench shows. */
export interface BenchView {
  readonly sentence: string;
  readonly tank: TankView | null;
  readonly deep: DeepView | null;
  /** What is asked before anything moves on; null while hands may work. */
  readonly prompt: Prompt | null;
  /** The lesson that is gone through; null where the bench is free. */
  readonly lesson: BenchLessonView | null;
  /** Gas as somebody sketched it before it was seen: pressure and volume, Pa and m³. */
  readonly sketched: readonly (readonly [pressurePa: number, volumeM3: number])[];
}

/** A lesson at the bench. */
export interface BenchLessonView {
  readonly id: string;
  readonly title: string;
  /** Whether the water may be changed in it. */
  readonly water: boolean;
  readonly trying: {
    readonly title: string;
    readonly hint: string;
    /** Hands are showing it. */
    readonly shown: boolean;
    readonly aims: readonly { readonly says: string; readonly state: 'met' | 'now' | 'ahead' }[];
  } | null;
  /** What came of it, once nothing is left. */
  readonly came: {
    readonly passed: boolean;
    readonly demands: readonly StepDemand[];
    readonly predictions: readonly PredictionOutcome[];
    readonly question: string;
    readonly waterAdds: string;
    /** Why it was not kept; empty where it was. */
    readonly trouble: string;
  } | null;
  /** A path that is walked before a class: what comes after this lesson, empty after the last; null where none is walked. */
  readonly walkNext: string | null;
}

/** What is asked of the place: of the bench, of a lesson at it, or to sketch before one sees. */
export type BenchWish =
  | BenchAsk
  | { readonly do: 'lesson'; readonly id: string; readonly resumed: boolean }
  | { readonly do: 'go-on' }
  /** What a clicker's *next* asks. */
  | { readonly do: 'walk-on' }
  | { readonly do: 'sketch' };
