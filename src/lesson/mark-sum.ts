import type { MarkId } from './lesson.ts';
import type { Criterion, Mark, MarkPart, ReportWord } from './mark.ts';
import { lin } from './measures.ts';
import { ROWS_PER_S } from './goal.ts';

/** A measured quantity with its thresholds: full credit at `good`, none at `bad`. */
export interface Evidence {
  readonly id: string;
  readonly label: string;
  readonly raw: number;
  readonly unit: string;
  readonly good: number;
  readonly bad: number;
  /** Left out: lin(raw; good, bad). */
  readonly credit?: number;
  readonly row: number | null;
  readonly reason: string;
}

/** A term of the weighted sum. Weights of a mark add up to 1. */
export interface Term extends Evidence {
  readonly weight: number;
}

/** A limit that some event sets to a mark. */
export interface Cap {
  readonly id: string;
  readonly most: number;
  readonly label: string;
  readonly raw: number;
  readonly unit: string;
  readonly row: number | null;
  readonly reason: string;
}

/** A criterion before its row is turned into seconds. */
export interface Demand extends Omit<Criterion, 'atS'> {
  readonly row: number | null;
}

/** All that a mark is made of. */
export interface MarkSum {
  readonly id: MarkId;
  readonly terms: readonly Term[];
  /** Each multiplies what is left; one that is not whole keeps the floor away when `guardsFloor` is set. */
  readonly gates: readonly (Evidence & { readonly guardsFloor?: boolean })[];
  readonly demands: readonly Demand[];
  readonly caps: readonly Cap[];
}

/** A met mark is at least this, one that is not met at most that. */
const FLOOR = 50;
const CEILING = 79;

/** Report word of a score: below 50 not yet, below 80 nearly. */
export function wordOf(score: number): ReportWord {
  return score < 50 ? 'not yet' : score < 80 ? 'nearly' : 'secure';
}

/** Adds up a mark: 100 × gates × Σ weight × credit, then floor and ceiling, then caps, each with the points that it took. */
export function sumMark(sum: MarkSum): Mark {
  const parts: MarkPart[] = [];
  let score = 100;
  const take = (to: number, evidence: Omit<MarkPart, 'pointsLost' | 'atS'> & { readonly row: number | null }) => {
    const { row, ...rest } = evidence;
    parts.push({ ...rest, pointsLost: score - to, atS: secondsOf(row) });
    score = to;
  };
  for (const { weight, ...term } of sum.terms) take(score - 100 * weight * (1 - creditOf(term)), shownOf(term));
  for (const gate of sum.gates) take(score * creditOf(gate), shownOf(gate));

  const ok = sum.demands.every(({ met }) => met);
  const whole = sum.gates.every((gate) => !gate.guardsFloor || creditOf(gate) === 1);
  const free = { raw: score, unit: '', good: null, bad: null, row: null };
  if (ok && whole && score < FLOOR)
    take(FLOOR, {
      ...free,
      id: 'floor',
      label: 'all that was asked for',
      reason: 'Everything asked for was met: half the points at least.',
    });
  if (!ok && score > CEILING)
    take(CEILING, {
      ...free,
      id: 'ceiling',
      label: 'something that was asked for',
      reason: 'Not everything asked for was met: not secure yet.',
    });
  for (const { most, id, label, raw, unit, row, reason } of sum.caps)
    take(Math.min(score, most), { id, label, raw, unit, good: null, bad: null, row, reason });

  const criteria = sum.demands.map(({ row, ...demand }) => ({ ...demand, atS: secondsOf(row) }));
  return { id: sum.id, score, word: wordOf(score), ok, criteria, parts };
}

/** The mark of something that was never reached: 0, and why. */
export function notReached(id: MarkId, reason: string): Mark {
  const part = { id: 'not-reached', label: 'reached in time', raw: 0, unit: '', good: null, bad: null };
  const demand = { id: 'reached', demand: 'reached in time', value: 0, unit: '', met: false, atS: null };
  return {
    id,
    score: 0,
    word: 'not yet',
    ok: false,
    criteria: [demand],
    parts: [{ ...part, pointsLost: 100, atS: null, reason }],
  };
}

function creditOf({ credit, raw, good, bad }: Evidence): number {
  return credit ?? lin(raw, good, bad);
}

function shownOf({ id, label, raw, unit, good, bad, row, reason }: Evidence) {
  return { id, label, raw, unit, good, bad, row, reason };
}

function secondsOf(row: number | null): number | null {
  return row === null ? null : row / ROWS_PER_S;
}
