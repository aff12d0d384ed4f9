import type { Rig } from '../diver/index.ts';
import { TICKS_PER_S, midBreathCl, pieceAtHand, restingControls, ventFor, type DiveState } from '../dive/index.ts';
import { divePosture, pilotOf, type Pilot } from '../pilot/index.ts';
import { releasableMask } from './happening.ts';
import type { Flyer, ScriptChange } from './watch.ts';

/** Who flies a dive: a simulated diver of a seed, or a script, which always does the same. */
export function flyerOf(by: Flyer, rig: Rig, seed: number): Pilot {
  return by.pilot === undefined ? scripted(by.script, rig) : pilotOf(by.pilot, rig, seed);
}

/** Time from one piece of lead in the hand to the next, decisions of a twentieth of a second each. Practice. */
const DECISIONS_A_PIECE = 4;

/** Does what a script says when it says it; the attitude is that of a dive from the surface unless the script has one. */
function scripted(script: readonly ScriptChange[], rig: Rig): Pilot {
  let next = 0;
  let now: Omit<ScriptChange, 'atS'> = {};
  let pitchDeg: 0 | 90 = 90;
  let startTick: number | null = null;
  let pieces = 0;
  let waited = 0;
  /** The piece that the hand takes now; 0 none. */
  const handled = ({ releasedMask }: Readonly<DiveState>, releaseMask: number): number => {
    if (pieces === 0 || waited++ % DECISIONS_A_PIECE > 0) return 0;
    const way = pieces < 0 ? 1 : -1;
    pieces += way;
    return pieceAtHand(rig, releasedMask, releaseMask, way);
  };
  return {
    decide(state: Readonly<DiveState>) {
      startTick ??= state.tick;
      const atS = (state.tick - startTick) / TICKS_PER_S;
      for (let change = script[next]; change && change.atS <= atS + 1e-9; change = script[next]) {
        const { leadPieces = 0, ...held } = change;
        now = { ...now, ...held };
        pieces += leadPieces;
        waited = 0;
        next++;
      }
      pitchDeg = divePosture(state.depthM, pitchDeg);
      const lungsL = now.lungsL ?? null;
      const on = (what: boolean | undefined) => (what === true ? 1 : 0);
      const releaseMask = now.release === true ? releasableMask(rig) : 0;
      return {
        ...restingControls(lungsL === null ? midBreathCl(rig) : Math.round(lungsL * 100)),
        breath: lungsL === null ? 0 : 1,
        jacketAdd: on(now.jacketAdd),
        jacketVent: now.jacketVent === true ? ventFor(state.pitchSin) : 0,
        oral: on(now.oral),
        suitAdd: on(now.suitAdd),
        suitVent: on(now.suitVent),
        suitValveHPa: now.suitValveHPa ?? -1,
        diluent: on(now.diluent),
        finsN: now.finsN ?? 0,
        pitchDeg: now.pitchDeg ?? pitchDeg,
        holdLine: on(now.holdLine),
        releaseMask,
        handLead: handled(state, releaseMask),
      };
    },
  };
}
