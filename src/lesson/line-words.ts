import type { FlownTask, HeldPlace } from './line-evidence.ts';
import type { RateGap } from './rate-gaps.ts';

/** So many gaps get words on the line, the worst first, and none below so many metres. */
const MOST_GAPS = 2;
const LEAST_M = 0.3;

/** What stands over a task: "Descent: nearly"; its title alone where no mark looks at it. */
export function taskWords({ title, word }: Pick<FlownTask, 'title' | 'word'>): string {
  return `${title.charAt(0).toUpperCase()}${title.slice(1)}${word === null ? '' : `: ${word}`}`;
}

/** How far a stretch led beyond its limit: "2.3 m too far up". */
export function gapWords({ way, metres }: Pick<RateGap, 'way' | 'metres'>): string {
  return `${metres.toFixed(1)} m too far ${way}`;
}

/** The gaps that get words. */
export function toldGaps(gaps: readonly RateGap[]): RateGap[] {
  return gaps
    .filter(({ metres }) => metres >= LEAST_M)
    .sort((a, b) => b.metres - a.metres)
    .slice(0, MOST_GAPS);
}

/** How far off a depth was held: "typically 0.41 m off". */
export function offWords({ rmsM }: Pick<HeldPlace, 'rmsM'>): string {
  return `typically ${rmsM.toFixed(rmsM < 1 ? 2 : 1)} m off`;
}

/** How long a hold was out of its band: "7 s outside"; empty where it never was. */
export function outsideWords({ outS }: Pick<HeldPlace, 'outS'>): string {
  return outS > 0 ? `${outS < 10 ? Number(outS.toFixed(1)) : Math.round(outS)} s outside` : '';
}
