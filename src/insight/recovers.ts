import type { Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import type { StoppingAsk } from './attempt.ts';
import { MEANS, type Means, type Way } from './means.ts';
import { CASES, Recovery, type Switches } from './recovery.ts';

/**
 * The deepest a means recovers from sinking, and the shallowest from rising; null where it does from nowhere. Where water in
 * layers makes several stretches, the end of the one about the diver, or of the nearest.
 */
export interface Reach {
  readonly means: Means;
  readonly deepestM: number | null;
  readonly shallowestM: number | null;
}

/** How deep, and how shallow, a diver with this gas at this speed may be for each means to recover him. */
export function recovers(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk): Reach[] {
  const recovery = new Recovery(rig, state, controls, ask);
  const edge = (means: Means, way: Way): number | null => {
    const which = CASES.findIndex((one) => one.means === means && one.way === way);
    if (which < 0) return null;
    const all = stretches(recovery.find(which), recovery.topM, recovery.bottomM);
    // Rising too fast for a limit of speed: from close under the surface there is no time for it, which is no recovery.
    const fromBelow = way < 0 && ask.above.kind === 'rate' && rig.column.segments.length === 1;
    const stretch = fromBelow ? all.find(([, toM]) => toM === recovery.bottomM) : nearest(all, state.depthM);
    return stretch?.[way > 0 ? 1 : 0] ?? null;
  };
  return MEANS.map((one) => ({ means: one, deepestM: edge(one, 1), shallowestM: edge(one, -1) }));
}

/** The stretches of depth in which a case recovers, shallow first. */
function stretches({ worksAtTop, atM }: Switches, topM: number, bottomM: number): (readonly [number, number])[] {
  const ends = worksAtTop ? [topM, ...atM] : [...atM];
  if (ends.length % 2 === 1) ends.push(bottomM);
  return ends.flatMap((fromM, i) => (i % 2 === 0 ? [[fromM, ends[i + 1]!] as const] : []));
}

function nearest(all: readonly (readonly [number, number])[], depthM: number): readonly [number, number] | null {
  const away = ([fromM, toM]: readonly [number, number]) => Math.max(fromM - depthM, depthM - toM, 0);
  return all.reduce<readonly [number, number] | null>(
    (best, one) => (best && away(best) <= away(one) ? best : one),
    null,
  );
}
