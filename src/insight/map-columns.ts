import { CASES, worksAt, type Recovery, type Switches } from './recovery.ts';

/** Columns that are solved before any stretch between two is split; more where what works can change back and forth with depth. */
const FIRST_COLUMNS = 3;
const FIRST_COLUMNS_LAYERED = 25;
/** So many columns may follow a curve that a look at their middle has confirmed. */
const WIDEST_CURVE = 16;

/**
 * In what boundaries are straightest over a map: in depth over gas, since gas grows as the pressure does; over lead in its reciprocal,
 * since what a suit or a jacket holds of a given gas shrinks so. Its own inverse; about 10 m is the pressure of the air.
 */
type Straight = (depthM: number) => number;
export const IN_DEPTH: Straight = (depthM) => depthM;
export const IN_RECIPROCAL: Straight = (depthM) => (AIR_M * AIR_M) / (depthM + AIR_M) - AIR_M;
const AIR_M = 10;

/**
 * Switches of every case in every column. Some columns are solved; where the one in the middle of a stretch lies where the curve
 * through its neighbours leads, the others follow that curve; else the stretch is split. All cases go through their first columns
 * before any is split: an engine that has seen every kind of look once compiles it once.
 */
export function solvedColumns(
  count: number,
  recoveryAt: (column: number) => Recovery,
  straight: Straight = IN_DEPTH,
): Switches[][] {
  const cases: CaseColumns[] = [];
  for (let which = 0; which < CASES.length; which++)
    cases.push(new CaseColumns(count, recoveryAt, which, straight, [...cases]));
  for (let step = 0; step < count; step++) for (const one of cases) one.begin(step);
  return cases.map((one) => one.finish());
}

/** The columns of one case while they are being solved. */
class CaseColumns {
  readonly #columns: (Switches | undefined)[];
  /** Columns in which no depth was passed over. */
  readonly #sure: boolean[];
  #at = 0;
  readonly #stops: readonly number[];
  readonly #recoveryAt: (column: number) => Recovery;
  readonly #which: number;
  readonly #monotone: boolean;
  readonly #straight: Straight;
  readonly #before: readonly CaseColumns[];

  /** @param before the cases that come before this one: where one of them settles what a map says, this one does not count */
  constructor(
    count: number,
    recoveryAt: (column: number) => Recovery,
    which: number,
    straight: Straight,
    before: readonly CaseColumns[],
  ) {
    this.#straight = straight;
    this.#columns = new Array<Switches | undefined>(count);
    this.#sure = new Array<boolean>(count).fill(false);
    this.#recoveryAt = recoveryAt;
    this.#which = which;
    this.#monotone = recoveryAt(0).isMonotone(which);
    // One that changes once takes a few looks a column, no more than it takes to see where it does not count.
    this.#before = this.#monotone ? [] : before;
    const first = Math.min(this.#monotone ? FIRST_COLUMNS : FIRST_COLUMNS_LAYERED, count);
    this.#stops = Array.from({ length: first }, (_, k) => Math.round(((count - 1) * k) / Math.max(1, first - 1)));
  }

  /** Solves one of the first columns; nothing once they are done. */
  begin(step: number): void {
    const at = this.#stops[step];
    if (at === undefined) return;
    this.#solve(at, this.#monotone && step > 0 ? this.#columns[this.#stops[step - 1]!]! : null);
  }

  finish(): Switches[] {
    for (let k = 1; k < this.#stops.length; k++) this.#split(this.#stops[k - 1]!, this.#stops[k]!, null);
    return this.#columns as Switches[];
  }

  #solve(i: number, guess: Switches | null): Switches {
    const recovery = this.#recoveryAt(i);
    this.#at = i;
    if (guess && this.#before.length > 0 && this.#isNeedless(recovery)) return (this.#columns[i] = guess);
    const found =
      (guess && recovery.confirm(this.#which, guess, this.#needless)) ?? recovery.find(this.#which, this.#needless);
    this.#sure[i] = !recovery.passedOver;
    return (this.#columns[i] = found);
  }

  /** Whether nothing depends on this case at a depth of the column that is being solved. */
  readonly #needless = (depthM: number): boolean => {
    for (const one of this.#before) if (one.#settles(this.#at, depthM, this.#which)) return true;
    return false;
  };

  /** Whether nothing depends on this case anywhere in the column that is being solved. */
  #isNeedless({ topM, bottomM }: Recovery): boolean {
    const edges = [topM, bottomM];
    for (const one of this.#before)
      for (const depthM of one.#columns[this.#at]?.atM ?? []) if (depthM > topM && depthM < bottomM) edges.push(depthM);
    edges.sort(ascending);
    for (let k = 1; k < edges.length; k++) if (!this.#needless((edges[k - 1]! + edges[k]!) / 2)) return false;
    return true;
  }

  /** Whether another case does not count at a depth: gentler means are enough there, or, for one who rises, he would sink. */
  #settles(i: number, depthM: number, other: number): boolean {
    const known = this.#columns[i];
    if (!known) return false;
    const mine = CASES[this.#which]!;
    if (mine.way === CASES[other]!.way) return worksAt(known, depthM);
    return mine.means === 'none' && !worksAt(known, depthM);
  }

  /** @param bows how far the curve lay beside the straight line in the middle of the stretch of which this one is a half */
  #split(from: number, to: number, bows: readonly number[] | null): void {
    if (to - from < 2) return;
    const columns = this.#columns;
    const straight = this.#straight;
    const middle = (from + to) >> 1;
    const [a, b] = [columns[from]!, columns[to]!];
    const line = between(a, b, (middle - from) / (to - from), straight);
    const curve = line && bows?.length === line.atM.length ? moved(line, bows, 0.25, straight) : line;
    const found = this.#solve(middle, curve ?? (this.#monotone ? (a.atM.length > 0 ? a : b) : null));
    const beside =
      line && isAlike(line, found) ? found.atM.map((depthM, i) => straight(depthM) - straight(line.atM[i]!)) : null;
    const sure = this.#sure[from] && this.#sure[middle] && this.#sure[to];
    if (
      beside &&
      curve &&
      sure &&
      to - from <= WIDEST_CURVE &&
      found.atM.every((depthM, i) => depthM === curve.atM[i])
    ) {
      for (let i = from + 1; i < to; i++) {
        const share = (i - from) / (to - from);
        columns[i] = moved(between(a, b, share, straight)!, beside, 4 * share * (1 - share), straight);
      }
      return;
    }
    this.#split(from, middle, beside);
    this.#split(middle, to, beside);
  }
}

/** The switches between two others; null where they are not of one kind. */
function between(a: Switches, b: Switches, share: number, straight: Straight): Switches | null {
  if (!isAlike(a, b)) return null;
  return {
    worksAtTop: a.worksAtTop,
    atM: a.atM.map((depthM, i) => straight(straight(depthM) + (straight(b.atM[i]!) - straight(depthM)) * share)),
  };
}

function moved({ worksAtTop, atM }: Switches, by: readonly number[], share: number, straight: Straight): Switches {
  return { worksAtTop, atM: atM.map((depthM, i) => straight(straight(depthM) + share * by[i]!)) };
}

const ascending = (a: number, b: number): number => a - b;

function isAlike(a: Switches, b: Switches): boolean {
  return a.worksAtTop === b.worksAtTop && a.atM.length === b.atM.length;
}
