import type { MapBand, RecoveryMap } from '../insight/index.ts';

/** What may stand in an area of the map. */
export type AreaMeans = MapBand['means'];

/** A connected area of one means and one danger: its upper and lower edge, metres, over values across that ascend. */
export interface Area {
  readonly means: AreaMeans;
  readonly way: MapBand['way'];
  readonly across: readonly number[];
  readonly topsM: readonly number[];
  readonly bottomsM: readonly number[];
}

/**
 * What tells areas apart that bear words: means and danger; on a narrow page the means alone, which the texture tells too, since there
 * words for each would stand on one another.
 */
export function kindOf({ means, way }: Area, narrow: boolean): string {
  return narrow ? means : `${means} ${way}`;
}

interface Growing {
  readonly means: AreaMeans;
  readonly way: MapBand['way'];
  readonly across: number[];
  readonly topsM: number[];
  readonly bottomsM: number[];
}

const isAlike = (a: MapBand, b: MapBand) => a.means === b.means && a.way === b.way;

/**
 * The areas of a map, edges straight from column to column: bands of the same kind are joined in order, one that a neighbour lacks
 * runs out to a point there. Together the areas cover the columns without gap or overlap.
 */
export function areasOf({ across: { values }, columns }: Pick<RecoveryMap, 'across' | 'columns'>): Area[] {
  const out: Growing[] = [];
  const open = (band: MapBand, across: number, topM: number, bottomM: number): Growing => {
    const area = { means: band.means, way: band.way, across: [across], topsM: [topM], bottomsM: [bottomM] };
    out.push(area);
    return area;
  };
  let before: Growing[] = (columns[0] ?? []).map((band) => open(band, values[0]!, band.fromM, band.toM));
  for (let i = 1; i < columns.length; i++) {
    const [left, right] = [columns[i - 1]!, columns[i]!];
    const now: Growing[] = [];
    // Where the bands so far end on either side: a band that one side lacks runs out to a point there.
    let [leftM, rightM] = [left[0]?.fromM ?? 0, right[0]?.fromM ?? 0];
    for (const [from, to] of pairsOf(left, right)) {
      const area = from === null ? open(right[to!]!, values[i - 1]!, leftM, leftM) : before[from]!;
      if (from !== null) leftM = left[from]!.toM;
      const topM = rightM;
      if (to !== null) {
        rightM = right[to]!.toM;
        now.push(area);
      }
      area.across.push(values[i]!);
      area.topsM.push(topM);
      area.bottomsM.push(rightM);
    }
    before = now;
  }
  return out;
}

/** Bands of two columns side by side, in order: the longest common sequence joined, the rest alone. */
function pairsOf(left: readonly MapBand[], right: readonly MapBand[]): [number | null, number | null][] {
  const [n, m] = [left.length, right.length];
  if (n === m && left.every((band, i) => isAlike(band, right[i]!))) return left.map((_, i) => [i, i]);
  const best = Array.from({ length: n + 1 }, () => new Array<number>(m + 1).fill(0));
  for (let i = n - 1; i >= 0; i--)
    for (let j = m - 1; j >= 0; j--)
      best[i]![j] = isAlike(left[i]!, right[j]!)
        ? best[i + 1]![j + 1]! + 1
        : Math.max(best[i + 1]![j]!, best[i]![j + 1]!);
  const out: [number | null, number | null][] = [];
  let [i, j] = [0, 0];
  while (i < n || j < m) {
    if (i < n && j < m && isAlike(left[i]!, right[j]!)) out.push([i++, j++]);
    else if (i < n && (j === m || best[i + 1]![j]! >= best[i]![j + 1]!)) out.push([i++, null]);
    else out.push([null, j++]);
  }
  return out;
}
