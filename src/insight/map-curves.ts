import type { Switches } from './recovery.ts';

/**
 * In what boundaries are straightest over a map: in depth over gas, since gas grows as the pressure does; over lead in its reciprocal,
 * since what a suit or a jacket holds of a given gas shrinks so. Its own inverse; about 10 m is the pressure of the air.
 */
export type Straight = (depthM: number) => number;
export const IN_DEPTH: Straight = (depthM) => depthM;
export const IN_RECIPROCAL: Straight = (depthM) => (AIR_M * AIR_M) / (depthM + AIR_M) - AIR_M;
const AIR_M = 10;

/** The switches between two others; null where they are not of one kind. */
export function between(a: Switches, b: Switches, share: number, straight: Straight): Switches | null {
  if (!isAlike(a, b)) return null;
  return {
    worksAtTop: a.worksAtTop,
    atM: a.atM.map((depthM, i) => straight(straight(depthM) + (straight(b.atM[i]!) - straight(depthM)) * share)),
  };
}

/** Switches moved by shares of these distances. */
export function moved(
  { worksAtTop, atM }: Switches,
  by: readonly number[],
  share: number,
  straight: Straight,
): Switches {
  return { worksAtTop, atM: atM.map((depthM, i) => straight(straight(depthM) + share * by[i]!)) };
}

/** Where the curve through the switches of some columns of one kind leads in another one: the polynomial that all of them lie on. */
export function curveThrough(
  columns: readonly Switches[],
  at: readonly number[],
  wanted: number,
  straight: Straight,
): Switches {
  const shares = at.map((mine) =>
    at.reduce((share, other) => (other === mine ? share : (share * (wanted - other)) / (mine - other)), 1),
  );
  const { worksAtTop, atM } = columns[0]!;
  return {
    worksAtTop,
    atM: atM.map((_, i) => straight(shares.reduce((sum, share, k) => sum + share * straight(columns[k]!.atM[i]!), 0))),
  };
}

/** Whether two columns are of one kind. */
export function isAlike(a: Switches, b: Switches): boolean {
  return a.worksAtTop === b.worksAtTop && a.atM.length === b.atM.length;
}
