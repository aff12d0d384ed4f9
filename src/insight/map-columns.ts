import { IN_DEPTH, between, curveThrough, isAlike, moved, type Straight } from './map-curves.ts';
import { CASES, HELD_M, worksAt, type Recovery, type Switches } from './recovery.ts';

/** Columns that are solved before any stretch between two is split; more where what works can change back and forth with depth. */
const FIRST_COLUMNS = 3;
const FIRST_COLUMNS_LAYERED = 25;
/** So many columns may follow a curve that a look at their middle has confirmed. */
const WIDEST_CURVE = 16;

/**
 * Switches of every case in every column. Some columns are solved; where the one in the middle of a stretch lies where the curve
 * through its neighbours leads, the others follow that curve; else the stretch is split. Where what works can change back and
 * forth, the first columns are looked through from top to bottom and reckoned from one another. All cases go through their first columns
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
  readonly #order: readonly number[];
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
    this.#order = this.#monotone ? this.#stops.map((_, k) => k) : fromFarApart(first);
  }

  /** Solves one of the first columns; nothing once they are done. */
  begin(step: number): void {
    const k = this.#order[step];
    if (k === undefined) return;
    const at = this.#stops[k]!;
    if (this.#monotone) this.#solve(at, k > 0 ? this.#columns[this.#stops[k - 1]!]! : null);
    else this.#scan(at, this.#curveAt(k));
  }

  finish(): Switches[] {
    const stops = this.#stops;
    for (let k = 1; k < stops.length; k++) {
      const [from, middle, to] = [stops[k - 1]!, stops[k]!, stops[k + 1]!];
      if (!this.#monotone && to - from <= WIDEST_CURVE && [k - 1, k, k + 1].every((near) => this.#isOnCurve(near))) {
        this.#follow(from, middle, to);
        k++;
      } else this.#split(from, middle, null);
    }
    return this.#columns as Switches[];
  }

  /** Looks at a column from top to bottom: what works there may show in no other. */
  #scan(i: number, guess: Switches | null): void {
    const recovery = this.#recoveryAt(i);
    this.#at = i;
    const found = recovery.find(this.#which, this.#needless, guess);
    this.#sure[i] = !recovery.passedOver;
    this.#columns[i] = found;
  }

  /**
   * Whether one of the first columns lies where the curve through its neighbours leads; the outermost always does. One alone
   * may do so by chance where a boundary has a corner, never its neighbours as well.
   */
  #isOnCurve(k: number): boolean {
    if (k === 0 || k === this.#stops.length - 1) return true;
    const curve = this.#curveAt(k);
    const { atM, worksAtTop } = this.#columns[this.#stops[k]!]!;
    if (curve?.worksAtTop !== worksAtTop || curve.atM.length !== atM.length) return false;
    return atM.length > 0 && atM.every((depthM, i) => Math.abs(depthM - curve.atM[i]!) <= HELD_M);
  }

  /** Where the curve through the known ones of the first columns leads, up to two on either side; null where they are unlike. */
  #curveAt(k: number): Switches | null {
    const known = (from: number, side: 1 | -1): number => {
      let at = from + side;
      while (at >= 0 && at < this.#stops.length && !this.#columns[this.#stops[at]!]) at += side;
      return at;
    };
    const columnAt = (stop: number): Switches | undefined => this.#columns[this.#stops[stop] ?? -1];
    const [left, right] = [known(k, -1), known(k, 1)];
    const near = columnAt(left);
    if (!near) return null;
    const through = [left, right, known(left, -1), known(right, 1)].filter((stop, i) => {
      const column = columnAt(stop);
      return i < 2 || (column && isAlike(near, column));
    });
    const other = columnAt(right);
    if (!other || !isAlike(near, other)) return null;
    const columns = through.map((stop) => columnAt(stop)!);
    return curveThrough(
      columns,
      through.map((stop) => this.#stops[stop]!),
      this.#stops[k]!,
      this.#straight,
    );
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
      this.#follow(from, middle, to);
      return;
    }
    this.#split(from, middle, beside);
    this.#split(middle, to, beside);
  }

  /** Lets the columns of a stretch lie on the curve through its ends and its middle. */
  #follow(from: number, middle: number, to: number): void {
    const at = [from, middle, to];
    const columns = at.map((i) => this.#columns[i]!);
    for (let i = from + 1; i < to; i++)
      if (i !== middle) this.#columns[i] = curveThrough(columns, at, i, this.#straight);
  }
}

const ascending = (a: number, b: number): number => a - b;

/** The numbers below a count, the ends first, then again and again what is in the middle of a gap. */
function fromFarApart(count: number): number[] {
  const order = count > 1 ? [0, count - 1] : [0];
  const gaps: [number, number][] = [[0, count - 1]];
  for (const [from, to] of gaps) {
    if (to - from < 2) continue;
    const middle = (from + to) >> 1;
    order.push(middle);
    gaps.push([from, middle], [middle, to]);
  }
  return order;
}
