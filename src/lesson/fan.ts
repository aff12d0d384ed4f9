/** Dots of every line of a fan, at equal steps of its time; where it begins has none. */
export const FAN_DOTS = 10;

/** Two lines that end closer than this are drawn apart, metres: nearer they would be read as one. */
const APART_M = 0.35;
/** How far a schematic line goes where the model says that nothing moves, metres. */
const SCHEMATIC_M = 1.5;

/** Where an answer ends, metres. */
export interface FanEnd {
  readonly id: string;
  readonly endM: number;
}

/** Which way an answer leads: -1 up, 1 down, or a depth that it comes to, metres. */
export interface Leads {
  readonly id: string;
  readonly goes: -1 | 1 | { readonly toM: number };
}

/** One answer as depth over time, its letter that of the answer. */
export interface FanLine {
  readonly id: string;
  readonly letter: string;
  /** Metres, where it begins and at each of its dots. */
  readonly depthsM: readonly number[];
}

/**
 * A line for each answer, in the order of the answers. All are one kind of curve: they leave with the speed of the moment and bend
 * evenly to where they end. So the true one is no wavier, longer or finer than what is only believed: it is the model's at its end.
 */
export function fanOf(fromM: number, ends: readonly FanEnd[], leavesM = 0): FanLine[] {
  return ends.map(({ id, endM }, at) => ({
    id,
    letter: letterOf(at),
    depthsM: Array.from({ length: FAN_DOTS + 1 }, (_, i) => {
      const share = i / FAN_DOTS;
      return fromM + leavesM * share + (endM - fromM - leavesM) * share * share;
    }),
  }));
}

/** Letter of an answer by its place: A for the first. */
export const letterOf = (at: number): string => String.fromCharCode(65 + at);

/**
 * Ends of answers of which each is deeper than the one before: the true one at what the model comes to, the others where they are
 * believed to be, and apart from it.
 * @param believed shallow first, metres
 */
export function rankedEnds(believed: readonly FanEnd[], trueId: string, comesM: number): FanEnd[] {
  const rank = believed.findIndex(({ id }) => id === trueId);
  return believed.map(({ id, endM }, i) => {
    if (i === rank || rank < 0) return { id, endM: i === rank ? comesM : endM };
    const apartM = (i - rank) * APART_M;
    return { id, endM: Math.max(0, i < rank ? Math.min(endM, comesM + apartM) : Math.max(endM, comesM + apartM)) };
  });
}

/**
 * Ends of up, down, and what does not leave: who moves goes as far in the one direction as in the other, so that the length of a
 * line tells nothing.
 */
export function mirroredEnds(fromM: number, way: readonly Leads[], trueId: string, comesM: number): FanEnd[] {
  const moves = way.find(({ id }) => id === trueId)?.goes;
  const farM = typeof moves === 'number' ? Math.abs(comesM - fromM) : SCHEMATIC_M;
  return way.map(({ id, goes }) => {
    if (id === trueId) return { id, endM: comesM };
    return { id, endM: Math.max(0, typeof goes === 'number' ? fromM + goes * farM : goes.toM) };
  });
}
