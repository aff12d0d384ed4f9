import type * as v from 'valibot';
import { bounded, choice, group, list, number } from '../diver/file.ts';

/** Where a dive begins: which keys go together is in start.ts. */
export const startSchema = group({
  place: choice(['afloat', 'under']).wrapped,
  depthM: number(0.5, 100),
  jacketL: number(0, 60),
  offNeutralL: number(-30, 30),
  wrongByL: list(bounded(0, 10), 2, 2),
  speedMpmin: number(-60, 60),
  pitchDeg: number(-180, 180),
});

export type GivenStart = v.InferOutput<typeof startSchema>;
