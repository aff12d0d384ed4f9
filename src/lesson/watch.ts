import type { PilotName } from '../pilot/index.ts';
import type { LessonStart } from './start.ts';

/** One change of what a script does, held until changed; what is left out stays. */
export interface ScriptChange {
  readonly atS: number;
  readonly jacketAdd?: boolean;
  readonly jacketVent?: boolean;
  readonly oral?: boolean;
  readonly suitAdd?: boolean;
  readonly suitVent?: boolean;
  readonly diluent?: boolean;
  /** Lungs held at so much with the airway open; null breathes again. */
  readonly lungsL?: number | null;
  readonly finsN?: number;
  readonly pitchDeg?: number;
  readonly holdLine?: boolean;
  /** true: all lead that can be let go. */
  readonly release?: boolean;
  /** Pieces that are put on by hand at that moment, one each fifth of a second; below 0 taken off. */
  readonly leadPieces?: number;
  /** Opening pressure of the drysuit's valve. */
  readonly suitValveHPa?: number;
}

/** Who flies: a simulated diver, or a script. */
export type Flyer =
  | { readonly pilot: PilotName; readonly script?: undefined }
  | { readonly script: readonly ScriptChange[]; readonly pilot?: undefined };

/** A dive that is shown: its own start, who flies it where to, and the moments at which it is frozen and spoken about. */
export interface WatchStep {
  readonly kind: 'watch';
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly by: Flyer;
  readonly start: LessonStart;
  /** More lead than the lesson's diver wears, kilograms. */
  readonly moreLeadKg: number;
  /** Depth that the simulated diver steers for, metres. */
  readonly aimM: number;
  readonly freezes: readonly Freeze[];
}

export interface Freeze {
  readonly atS: number;
  readonly words: string;
}

/** What must come of it when somebody flies the lesson. */
export type Proof = Flyer & {
  readonly comes: 'pass' | 'fail';
  /** Of a failure: id of the mark, step, or habit that shows it; empty for any. */
  readonly fault: string;
};
