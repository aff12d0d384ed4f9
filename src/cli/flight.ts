import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import {
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  degreesOf,
  rowOf,
  withMishaps,
  type ControlChange,
  type Dive,
  type DiveEvent,
  type Mishap,
} from '../dive/index.ts';
import { litres } from './options.ts';

/** A moment of a dive as the command prints it: trade units, depth and speed positive down, force up positive. */
export interface Sample {
  readonly tS: number;
  readonly depthM: number;
  readonly speedMps: number;
  readonly pitchDeg: number;
  /** null on a closed loop, which has loopL instead. */
  readonly lungsL: number | null;
  readonly loopL?: number;
  readonly jacketL: number;
  readonly suitL: number;
  /** Gauge, the mean of the cylinders by size. */
  readonly cylinderBar: number;
  readonly netN: number;
}

/** An event as the command prints it. */
export type PrintedEvent = Omit<DiveEvent, 'tick'> & { readonly tS: number };

/** What came of a dive. */
export interface Flight {
  readonly samples: readonly Sample[];
  readonly events: readonly PrintedEvent[];
  readonly hash: string;
}

/**
 * Dives to the end under the changes given and looks at it at even distances, the start and the end included.
 * @param dive at its start
 * @param changes in order; ticks from the start
 * @param report is told the share that is done
 * @param mishaps what goes wrong beside what the changes say; seconds from tick 0
 */
export function flightOf(
  dive: Dive,
  changes: readonly ControlChange[],
  ticks: number,
  everyS: number,
  report: (share: number) => void,
  mishaps: readonly Mishap[] = [],
): Flight {
  const startTick = dive.tick;
  const samples = [sampleOf(dive, startTick)];
  let nextChange = 0;
  let nextSample = 1;
  let wanted = dive.controls;
  for (let now = 0; ; now = dive.tick - startTick) {
    const from = nextChange;
    for (; nextChange < changes.length && changes[nextChange].tick <= now; nextChange++)
      wanted = changes[nextChange].controls;
    if (dive.onTwentieth || nextChange > from) dive.steer(withMishaps(wanted, mishaps, dive.state));
    if (now >= ticks) break;
    const sampleTick = Math.max(now + 1, Math.round(nextSample * everyS * TICKS_PER_S));
    const asked = mishaps.length > 0 ? now - (now % TICKS_PER_CHANGE) + TICKS_PER_CHANGE : ticks;
    const until = Math.min(ticks, sampleTick, changes[nextChange]?.tick ?? ticks, asked, now + 60 * TICKS_PER_S);
    dive.advance(until - now);
    if (until === sampleTick) nextSample++;
    if (until === sampleTick || until === ticks) samples.push(sampleOf(dive, startTick));
    report(until / ticks);
  }
  report(1);
  const events = dive.events.map(({ tick, ...event }) => ({ tS: (tick - startTick) / TICKS_PER_S, ...event }));
  return { samples, events, hash: dive.hash() };
}

function sampleOf(dive: Dive, startTick: number): Sample {
  const { rig, state } = dive;
  const row = rowOf(rig, state);
  return {
    tS: (state.tick - startTick) / TICKS_PER_S,
    depthM: row.depthM,
    speedMps: row.speedMps,
    pitchDeg: degreesOf(row.pitchCos, row.pitchSin),
    lungsL: rig.lungs.open ? litres(row.lungM3) : null,
    ...(rig.loop ? { loopL: litres(row.loopM3) } : {}),
    jacketL: litres(row.jacketM3),
    suitL: litres(row.suitGasM3),
    cylinderBar: (row.cylinderPa - STANDARD_PRESSURE_PA) / 1e5,
    netN: row.netN,
  };
}
