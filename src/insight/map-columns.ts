import { CASES, type Recovery, type Switches } from './recovery.ts';

/** Columns that are solved before any stretch between two is split; more where what works can change back and forth with depth. */
const FIRST_COLUMNS = 3;
const FIRST_COLUMNS_LAYERED = 25;
/** So many columns may follow a curve that a look at their middle has confirmed. */
const WIDEST_CURVE = 16;

/**
 * Switches of every case in every column. Some columns are solved; where the one in the middle of a stretch lies where the curve
 * through its neighbours leads, the others follow that curve; else the stretch is split. All cases go through their first columns
 * before any is split: an engine that has seen every kind of look once compiles it once.
 */
export function solvedColumns(count: number, recoveryAt: (column: number) => Recovery): Switches[][] {
  const cases = CASES.map((_, which) => new CaseColumns(count, recoveryAt, which));
  for (let step = 0; step < count; step++) for (const one of cases) one.begin(step);
  return cases.map((one) => one.finish());
}

/** The columns of one case while they are being solved. */
class CaseColumns {
  readonly #columns: (Switches | undefined)[];
  readonly #stops: readonly number[];
  readonly #recoveryAt: (column: number) => Recovery;
  readonly #which: number;
  readonly #monotone: boolean;

  constructor(count: number, recoveryAt: (column: number) => Recovery, which: number) {
    this.#columns = new Array<Switches | undefined>(count);
    this.#recoveryAt = recoveryAt;
    this.#which = which;
    this.#monotone = recoveryAt(0).isMonotone(which);
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
    return (this.#columns[i] = (guess && recovery.confirm(this.#which, guess)) ?? recovery.find(this.#which));
  }

  /** @param bows how far the curve lay beside the straight line in the middle of the stretch of which this one is a half */
  #split(from: number, to: number, bows: readonly number[] | null): void {
    if (to - from < 2) return;
    const columns = this.#columns;
    const middle = (from + to) >> 1;
    const [a, b] = [columns[from]!, columns[to]!];
    const line = between(a, b, (middle - from) / (to - from));
    const curve = line && bows?.length === line.atM.length ? moved(line, bows, 0.25) : line;
    const found = this.#solve(middle, curve ?? (this.#monotone ? (a.atM.length > 0 ? a : b) : null));
    const beside = line && isAlike(line, found) ? found.atM.map((depthM, i) => depthM - line.atM[i]!) : null;
    if (beside && curve && to - from <= WIDEST_CURVE && found.atM.every((depthM, i) => depthM === curve.atM[i])) {
      for (let i = from + 1; i < to; i++) {
        const share = (i - from) / (to - from);
        columns[i] = moved(between(a, b, share)!, beside, 4 * share * (1 - share));
      }
      return;
    }
    this.#split(from, middle, beside);
    this.#split(middle, to, beside);
  }
}

/** The switches between two others; null where they are not of one kind. */
function between(a: Switches, b: Switches, share: number): Switches | null {
  if (!isAlike(a, b)) return null;
  return { worksAtTop: a.worksAtTop, atM: a.atM.map((depthM, i) => depthM + (b.atM[i]! - depthM) * share) };
}

function moved({ worksAtTop, atM }: Switches, byM: readonly number[], share: number): Switches {
  return { worksAtTop, atM: atM.map((depthM, i) => depthM + share * byM[i]!) };
}

function isAlike(a: Switches, b: Switches): boolean {
  return a.worksAtTop === b.worksAtTop && a.atM.length === b.atM.length;
}
