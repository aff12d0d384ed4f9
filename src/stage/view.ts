import type { Rig } from '../diver/index.ts';
import type { Means, RecoveryMap } from '../insight/index.ts';
import type { LineEvidence } from '../lesson/index.ts';
import type { ControlChange, Controls, DiveEvent, DiveState, Recording } from '../dive/index.ts';
import type { Box } from './words-place.ts';

/** A place to be, ahead or behind, on the time axis of the dive. */
export interface Band {
  /** Seconds since the start of the dive; an end of null lasts on past the edge of the paper. */
  readonly fromS: number;
  readonly toS: number | null;
  readonly topM: number;
  readonly bottomM: number;
  readonly words: string;
}

/** What is asked about the way that the diver will take, while it stands: lettered lines, one depth, or one rate. */
export interface Asked {
  readonly fromM: number;
  /** How long it takes, where that is known: lines and pins of a moment need it. */
  readonly overS: number | null;
  /** One for each answer, all of as many dots at equal steps of that time; metres, the first where it begins. */
  readonly lines: readonly { readonly letter: string; readonly depthsM: readonly number[] }[];
  /** Letter of the answer that is chosen so far; empty as long as none is. */
  readonly chosen: string;
  /** The depth to be said as it is set now, and between which it can be: at its moment, or, of no known one, on the scale. */
  readonly pin: {
    readonly atM: number;
    readonly leastM: number;
    readonly mostM: number;
    readonly words: string;
  } | null;
  /** The rate to be said as it is set now, m/s, down positive, and one to see it beside. */
  readonly slope?: {
    readonly mps: number;
    readonly words: string;
    readonly besideMps: number;
    readonly besideWords: string;
  };
}

/** A prediction that was locked, from that moment on: hollow, and beside it what came. */
export interface Said {
  readonly fromS: number;
  readonly overS: number;
  /** Where it was said that he would be, at the beginning and at equal steps of the time; a depth that was said stands alone. */
  readonly depthsM: readonly number[];
  readonly words: string;
  /** What the model comes to at the same moments, inked as they pass, and what is said of it at the end; null: the run inks it. */
  readonly came: { readonly depthsM: readonly number[]; readonly words: string } | null;
}

/** Vertical speeds allowed, m/s, both positive; the line is doubled where it is steeper. null: none in force. */
export interface RateLimits {
  readonly upMps: number | null;
  readonly downMps: number | null;
}

/** A moment on the line that the debrief speaks of. */
export interface Ring {
  readonly atS: number;
  readonly number: number;
}

/** A numbered moment on the line, and what somebody called it. */
export interface Bookmark extends Ring {
  readonly words: string;
}

/** Limits that came into force at a moment and hold until the next. */
export interface LimitsFrom {
  readonly fromS: number;
  readonly limits: RateLimits;
}

/** A neutral depth: a hilltop, from which a diver runs away either way, or a hollow, into which he comes back. */
export interface NeutralMark {
  readonly depthM: number;
  readonly stable: boolean;
}

/** Net force at a depth if the diver were there with the gas he has, newtons, up positive. */
export interface DepthForce {
  readonly depthM: number;
  readonly netN: number;
}

/** Where and when one means would stop the diver. */
export interface Ledge {
  /** Means and depth: "breath: 6.4 m". Where the ledge lies out of the picture, ", in 24 s" is added. */
  readonly words: string;
  readonly atS: number;
  readonly depthM: number;
}

/** A mark on the axis across a recovery map, in the map's own unit. */
export interface AcrossTick {
  readonly at: number;
  readonly words: string;
}

/** A store of gas: what it holds here, and what the same gas would fill at the surface, m³. */
export interface StoreBar {
  readonly words: string;
  readonly hereM3: number;
  readonly surfaceM3: number;
}

/** A part of what holds a diver up or pulls him down, kilograms of pull, never below 0. */
export interface PullBar {
  readonly words: string;
  readonly kgf: number;
  readonly isGas: boolean;
  /** The number that stands on it: it keeps its time with a sentence beside the picture, and adds up with those beside it. */
  readonly saidKgf: number;
}

/** What lies over the water: one family at a time. */
export type StageOverlay =
  /** A column of small force arrows on the now-line, pointing apart at a hilltop. */
  | { readonly kind: 'forces'; readonly arrows: readonly DepthForce[] }
  /** Ledges ahead, one for each means that still stops the diver; below them what is lost, in words. */
  | { readonly kind: 'ledges'; readonly ledges: readonly Ledge[]; readonly lost: readonly string[] }
  /** Each store of gas as a bar, all at one scale, its surface size as a dashed outline. */
  | { readonly kind: 'volumes'; readonly stores: readonly StoreBar[]; readonly scaleM3: number }
  /** What holds up and what pulls down as two bars at one scale, what changes at the free end, the surplus marked unless he floats. */
  | {
      readonly kind: 'ledger';
      readonly up: readonly PullBar[];
      readonly down: readonly PullBar[];
      /** His head is out and stays out: what is out of the water balances him, and what a moment has too much is his bobbing. */
      readonly afloat?: boolean;
    }
  /** The gentlest means that still works over depth and one other quantity; its dots stand level with the divers. */
  | {
      readonly kind: 'map';
      readonly maps: readonly RecoveryMap[];
      readonly acrossWords: string;
      readonly ticks: readonly AcrossTick[];
      /** What stands in the area of each means, and in that where none works. */
      readonly words: Readonly<Record<Means | 'lost', string>>;
    };

/** Another line of the same water: what would have come, or another dive. It has no figure. */
export interface BranchLine {
  readonly recording: Recording;
  /** Where it leaves the line that is flown, seconds; a ghost has its own beginning. */
  readonly fromS: number;
  /** On the knot. */
  readonly letter: string;
  /** At its end. */
  readonly words: string;
  /** A ghost: a long dash, without a knot. */
  readonly dashed: boolean;
}

/** The second of two divers on the same axis of time: a line of his own, an outline figure, another chest mark. */
export interface SecondView {
  readonly rig: Rig;
  readonly state: Readonly<DiveState>;
  readonly depthM: number;
  readonly controls: Controls;
  readonly recording: Recording;
  /** What he has that the first has not. */
  readonly words: string;
  /** What lies over the water is about him. */
  readonly looked: boolean;
}

/** All that one frame shows. Pure data: the stage keeps nothing that is not a function of the last view. */
export interface StageView {
  readonly rig: Rig;
  /** State of the last tick, and the moment between the last two ticks that is drawn, as depth, in metres. */
  readonly state: Readonly<DiveState>;
  readonly depthM: number;
  /** Seconds since the start of the dive at which `now` stands. */
  readonly nowS: number;
  readonly controls: Controls;
  readonly recording: Recording;
  readonly changes: readonly ControlChange[];
  readonly events: readonly DiveEvent[];
  /** What else is told of moments of the dive, in order: valves that stick, which a run holds as presses alone. */
  readonly told?: readonly { readonly atS: number; readonly words: string }[];
  /** Depths for each second ahead, the first for now; null where nothing must be given away. */
  readonly forecastM: readonly number[] | null;
  readonly bands: readonly Band[];
  readonly rings: readonly Ring[];
  readonly limits: RateLimits;
  /** Whether the limit hair is shown at any speed, as when it is taught. */
  readonly limitTaught: boolean;
  readonly frozen: boolean;
  /** Metres of water that the picture is to show from top to bottom; the stage may show more, never less. */
  readonly metresShown: number;
  /** Height at the foot of the picture that something on the page covers, CSS pixels: the diver keeps above it. */
  readonly coveredPx?: number;
  /** Cards of the page over the picture, in its pixels: words keep off them. */
  readonly cards?: readonly Box[];
  readonly forceArrow: boolean;
  /** Projector: heavier strokes, larger words, no bubbles. */
  readonly projector: boolean;
  readonly reducedMotion: boolean;
  readonly theme: 'light' | 'dark';
  /** Limits by time, in order, for a line that was drawn under several; left out: the limits in force now, everywhere. */
  readonly limitsBefore?: readonly LimitsFrom[];
  /** Depths that a full breath in and out would lead to, shallow first: an amber bracket on the scale. */
  readonly breathReachM?: readonly [number, number] | null;
  /** Words instead of "if you do nothing" after the forecast's depth; empty shows dots and ring alone. */
  readonly forecastWords?: string;
  /** Net force that the arrow shows, newtons, up positive; left out: that of the moment, which swings with each breath. */
  readonly arrowN?: number;
  /** Neutral depths for the present gas and the middle of the breath, on the scale. */
  readonly neutral?: readonly NeutralMark[];
  readonly overlay?: StageOverlay | null;
  /** Other lines drawn together with the one that is flown. */
  readonly branches?: readonly BranchLine[];
  /** Moments that a person marked on the line. */
  readonly bookmarks?: readonly Bookmark[];
  readonly second?: SecondView;
  readonly asked?: Asked | null;
  readonly said?: readonly Said[];
  /** What marks found, as places on the line: drawn where the whole line is looked back at. */
  readonly evidence?: LineEvidence;
}
