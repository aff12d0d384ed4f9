import type { Placed } from './placed.ts';
import type { MaterialId } from './materials.ts';
import type { PuttyShape } from './putty.ts';
import type { Point } from './section.ts';

/** Which of the benches: a tank, a deep tank, a bottle in a flask. */
export type BenchMode = 'tank' | 'deep' | 'bottle';

/** What can be put into the tank together. */
export type BenchSet = 'putty' | 'stones' | 'odd-stone' | 'can' | 'block' | 'stuffs';

/** Waters of the bench. */
export type BenchWaterName = 'fresh' | 'brackish' | 'salt';

/** A number of the thing that is chosen that can be set: its place on a slider; metres, kilograms, or a plain number. */
export interface BenchDial {
  readonly id: 'mass' | 'flatness' | 'hollow' | 'square' | 'wall' | 'width' | 'height';
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** The tank with its things. Lengths in metres from its lip downward. */
export interface TankView {
  readonly widthM: number;
  readonly heightM: number;
  readonly surfaceYM: number;
  readonly water: BenchWaterName;
  readonly densityKgPerM3: number;
  readonly set: BenchSet;
  readonly things: readonly (Placed & { readonly name: string })[];
  readonly chosenId: number;
  /** Where a hand holds the chosen thing; null when it was let go. */
  readonly hand: Point | null;
  readonly dials: readonly BenchDial[];
  readonly material: MaterialId | null;
  /** Depth of the hook of the spring balance that holds the chosen thing; null off it. */
  readonly hookYM: number | null;
  /** Depth of the open spout, and what ran through it into the glass, m³; null while it is shut. */
  readonly spoutYM: number | null;
  readonly glassM3: number;
  readonly forces: boolean;
}

/** A body with gas in a column of water. */
export interface DeepBody {
  readonly name: string;
  readonly depthM: number;
  readonly speedMps: number;
  readonly netN: number;
  readonly gasM3: number;
  readonly firmM3: number;
}

/** The deep tank, or the bottle diver in its flask. */
export interface DeepView {
  readonly kind: 'deep' | 'bottle';
  readonly bottomM: number;
  readonly bodies: readonly DeepBody[];
  /** Whether they are held at a depth. */
  readonly heldM: number | null;
  /** What a hand squeezes the flask with, pascals; always 0 in the deep tank. */
  readonly squeezePa: number;
  /** Pressure and volume of the gas, Pa and m³, where it has been. */
  readonly been: readonly (readonly [pressurePa: number, volumeM3: number])[];
  readonly pressurePa: number;
  /** Depth from which it does not come back; null where there is none in this water. */
  readonly noReturnM: number | null;
  /** Work to carry the body from the surface down, joules, evenly over the depth. */
  readonly hillJ: readonly number[];
}

/** What is asked of the bench. */
export type BenchAsk =
  | { readonly do: 'mode'; readonly mode: BenchMode }
  | { readonly do: 'set'; readonly set: BenchSet }
  | { readonly do: 'choose'; readonly id: number }
  | { readonly do: 'next' | 'let-go' | 'take' | 'under' | 'anew' }
  | { readonly do: 'carry'; readonly byXM: number; readonly byYM: number }
  | { readonly do: 'hand'; readonly at: Point | null }
  | { readonly do: 'shape'; readonly shape: PuttyShape }
  | { readonly do: 'dial'; readonly id: BenchDial['id']; readonly value: number }
  | { readonly do: 'material'; readonly material: MaterialId }
  | { readonly do: 'water'; readonly water: BenchWaterName }
  | { readonly do: 'balance' | 'spout' | 'forces' }
  | { readonly do: 'hook'; readonly byM: number }
  | { readonly do: 'depth'; readonly depthM: number }
  | { readonly do: 'squeeze'; readonly pa: number };
