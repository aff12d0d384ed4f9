import { resultOf } from './fixture.ts';

/** A neutral depth as the command prints it. */
export interface PrintedNeutral {
  readonly depthM: number;
  readonly stable: boolean;
  readonly eFoldingS: number | null;
  readonly periodS: number | null;
}

/** What `insight` prints. */
export interface PrintedInsight extends Readonly<
  Record<'growthPerS' | 'eFoldingS' | 'doublingS' | 'periodS', number | null>
> {
  readonly netN: number;
  readonly neutral: readonly PrintedNeutral[];
  readonly neutralMid: readonly PrintedNeutral[];
  readonly neutralFull: readonly PrintedNeutral[];
  readonly neutralEmpty: readonly PrintedNeutral[];
  readonly kNPerM: number;
  readonly inertiaKg: number;
  readonly shares: Readonly<Record<string, number>>;
  readonly breathReachM: readonly [number, number] | null;
  readonly breathReachesM: readonly (readonly [number, number])[];
  readonly way: 1 | -1;
  readonly stopping: readonly {
    readonly means: string;
    readonly stops: boolean;
    readonly depthM: number | null;
    readonly timeS: number | null;
    readonly peakMps: number;
  }[];
  readonly pricePerSecondM: number | null;
  readonly forecastM: readonly number[];
  readonly caution: string;
}

/** Litres in the jacket that take away the net force of a moment; the words are a setup and options of `forces`. */
export function jacketNeutralL(words: readonly (string | number)[]): number {
  const netN = (jacketL: number) => resultOf<{ netN: number }>('forces', ...words, '--jacket', jacketL).netN;
  // The force is a straight line in the volume.
  return (10 * netN(0)) / (netN(0) - netN(10));
}
