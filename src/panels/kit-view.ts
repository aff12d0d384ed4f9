import type { ReadySetup } from '../diver/index.ts';
import type { Pull } from './readings.ts';

/** One diver in one water, as *Kit and water* shows it. Masses of lead in kilograms, depths in metres. */
export interface KitDiver {
  readonly name: string;
  readonly note: string;
  /** Lead that makes the diver neutral at 5 m with 50 bar left, jacket empty, half a breath in; below 0: too heavy without any. */
  readonly neededKg: number;
  readonly carriedKg: number;
  /** The ledger at that weighing, with the lead that is carried. */
  readonly up: readonly Pull[];
  readonly down: readonly Pull[];
  readonly hover: KitHover;
  readonly figure: KitFigure;
}

/** What it is to hover there: jacket or suit gas for neutral at half a breath, 120 bar. */
export interface KitHover {
  readonly depthM: number;
  readonly bottomM: number;
  /** Net force that no gas the diver can have takes off at that depth, newtons, up positive; 0 where neutral is possible. */
  readonly leftN: number;
  /** Depths between which the lungs alone balance, nearest to that depth; null where they never do. */
  readonly reachM: readonly [fromM: number, toM: number] | null;
  /** Lung volumes between which they do so, m³. */
  readonly lungs: { readonly leastM3: number; readonly mostM3: number };
  /** Seconds in which a drift off doubles; null where it comes back by itself. */
  readonly doublingS: number | null;
  /** false on the closed loop, where a breath lifts nothing. */
  readonly openLungs: boolean;
}

/** What the figure is drawn from. */
export interface KitFigure {
  /** Foam, millimetres; 0 without. */
  readonly foamMm: number;
  /** Gas under a drysuit, m³; 0 without one. */
  readonly suitGasM3: number;
  readonly suitWords: string;
  readonly cylinders: readonly { readonly waterL: number; readonly material: string }[];
  /** Pieces that are worn, kilograms. */
  readonly leadKg: readonly number[];
  readonly loop: boolean;
}

/** One change, and what it does; everything else stays. */
export interface KitRow {
  readonly change: string;
  readonly group: string;
  /** The lead that is needed then, and by how much that differs from now. */
  readonly neededKg: number;
  readonly deltaKg: number;
  /** The change is one of lead itself: what differs is what is carried. */
  readonly ofLead: boolean;
  readonly hover: KitHover;
}

/** Where the water stands on a diver who hangs upright at the surface, jacket empty. */
export interface KitHead {
  readonly cylinder: 'full' | 'reserve';
  /** What was breathed, in words. */
  readonly breath: string;
  /** Waterline below the top of the head, metres; null for who goes under. */
  readonly waterlineM: number | null;
  readonly words: string;
  /** Net force with the head just covered, newtons, up positive: it decides. */
  readonly coveredN: number;
}

/** What one depth asks of jacket and hands. */
export interface KitDepth {
  readonly depthM: number;
  /** Lift that the suit has lost since the surface, newtons. */
  readonly suitLossN: number;
  readonly jacketM3: number;
  readonly jacketSurfaceM3: number;
  /** Net force that no jacket takes off, newtons, up positive; 0 where it can. */
  readonly leftN: number;
  /** To let out for each metre on the way up, at that depth. */
  readonly ventPerMetreM3: number;
}

/** Everything that the place shows. Plain data. */
export interface KitView {
  /** Id of a ready setup; empty for the diver that is flown and for a file. */
  readonly setupId: string;
  readonly setups: readonly ReadySetup[];
  /** What the empty id stands for; empty where it stands for nobody. */
  readonly ownWords: string;
  readonly basis: KitDiver;
  readonly rows: readonly KitRow[];
  /** Number of the row that is tried, and the diver with that change; both null where none is. */
  readonly triedRow: number | null;
  readonly tried: KitDiver | null;
  /** What is shown beside the changes belongs to the tried diver where there is one. */
  readonly heads: readonly KitHead[];
  readonly depths: readonly KitDepth[];
  /** By what the diver is lighter once the cylinders are down from full to 50 bar, newtons. */
  readonly cylinderLossN: number;
  readonly goesAlong: boolean;
  readonly canUndo: boolean;
}

/** What a person asks of the place. */
export type KitAsk =
  | { readonly do: 'choose'; readonly id: string }
  | { readonly do: 'file'; readonly file: File }
  | { readonly do: 'try'; readonly row: number | null }
  | { readonly do: 'carry'; readonly moreKg: number }
  | { readonly do: 'goes-along'; readonly on: boolean }
  | { readonly do: 'keep' | 'undo' | 'fly' | 'carry-needed' };
