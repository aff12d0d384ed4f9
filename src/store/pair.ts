import { rigOf, type Setup } from '../diver/index.ts';
import { Dive, midBreathCl, restingControls, startState } from '../dive/index.ts';
import { checkedRun, runRecord } from './beside.ts';
import type { KeptPair } from './kept.ts';

/** Where a second diver is tried, metres. */
const TRIED_M = 1;

/** The second diver as he is kept with a dive; null: it was flown alone; undefined: kept before anything was said of one. */
export async function pairOf(found: unknown): Promise<KeptPair | 'damaged' | null | undefined> {
  if (found === undefined || found === null) return found;
  try {
    const { difference, by, own, words } = found as Record<string, unknown>;
    if (typeof difference !== 'string' || typeof by !== 'string' || typeof words !== 'string') return 'damaged';
    if (own !== null) await tried(own as Setup);
    return { difference, by, own: own as Setup | null, words };
  } catch {
    return 'damaged';
  }
}

/** A setup that gives no diver is refused here, before anybody dives with it: his numbers are held to those of a run. */
async function tried(setup: Setup): Promise<void> {
  const rig = rigOf(setup);
  const start = startState(rig, { depthM: TRIED_M });
  await checkedRun(runRecord(new Dive(rig, start, restingControls(midBreathCl(rig)))));
}
