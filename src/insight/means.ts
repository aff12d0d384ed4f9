import type { Rig } from '../diver/index.ts';
import { ventFor, type Controls, type DiveState } from '../dive/index.ts';
import { handsOff } from './forecast.ts';

/**
 * What a diver can try, the gentlest first: nothing; the lungs alone; the fins alone; all valves that let gas into (or out of)
 * jacket, suit and loop; these three together; and besides these, all lead let go.
 */
export type Means = 'none' | 'breath' | 'fins' | 'gas' | 'all' | 'lead';

/** All means, the gentlest first. */
export const MEANS: readonly Means[] = ['none', 'breath', 'fins', 'gas', 'all', 'lead'];

/** Which way the trouble lies: 1 sinking, −1 rising. */
export type Way = 1 | -1;

/** Lung volumes between which a diver breathes when it matters, m³. */
export interface LungRange {
  readonly leastM3: number;
  readonly mostM3: number;
}

/** From nearly breathed out to nearly full: 1.8 and 5.8 L. Practice. */
export const USUAL_LUNGS: LungRange = { leastM3: 1.8e-3, mostM3: 5.8e-3 };

/** Attitude for a kick and the sine of pitch from which a turned diver kicks (40°), and the thrust asked for. Practice. */
const KICK_DEG = 60;
const TURNED_SIN = 0.643;
const KICK_N = 100;

/** Which parts of a diver a means uses. */
export interface Uses {
  readonly breath: boolean;
  readonly fins: boolean;
  readonly gas: boolean;
  readonly lead: boolean;
}

/**
 * What a means uses, for a diver and a way. Rising in a drysuit, all means leave the fins out: head-down the suit lets nothing
 * out. Letting lead go never helps who rises.
 */
export function usesOf(means: Means, way: Way, rig: Rig): Uses {
  const all = means === 'all' || means === 'lead';
  return {
    breath: means === 'breath' || all,
    fins: means === 'fins' || (all && !(way < 0 && rig.drysuit !== null)),
    gas: means === 'gas' || all,
    lead: means === 'lead' && way > 0,
  };
}

/** What a diver does from a moment on: asked again at each change of controls. */
export type Action = (state: Readonly<DiveState>) => Controls;

/**
 * What a diver does who tries a means with all that it has; everything else goes on as it was, hands off. Breath: straight to
 * full, or to empty, and it stays there. Fins: the body turned 60° the right way, then as hard as it goes: 100 N for five
 * seconds, 45 N after. Gas: every valve of jacket, suit and loop that lets gas in, or out; of the jacket's two vents the one
 * that a diver reaches for. The attitude stays as it is commanded unless fins are used; all means in a drysuit turn head up.
 */
export function actionOf(means: Means, way: Way, rig: Rig, controls: Controls, lungs: LungRange): Action {
  const uses = usesOf(means, way, rig);
  const base = handsOff(controls);
  const upright = means !== 'gas' && uses.gas && !uses.fins;
  const sinking = way > 0;
  const steady: Controls = {
    ...base,
    ...(uses.breath && rig.lungs.open
      ? { breath: 1, lungCl: lungCl(rig, sinking ? lungs.mostM3 : lungs.leastM3) }
      : {}),
    ...(uses.fins ? { attitude: 0, torqueNm: 0, pitchDeg: kickDeg(controls, way) } : {}),
    ...(upright ? { attitude: 0, torqueNm: 0, pitchDeg: KICK_DEG } : {}),
    ...(uses.gas && sinking ? { jacketAdd: 1, suitAdd: rig.drysuit ? 1 : 0, diluent: rig.loop ? 1 : 0 } : {}),
    ...(uses.gas && !sinking ? { suitVent: rig.drysuit ? 1 : 0, noseVent: rig.loop ? 1 : 0 } : {}),
    ...(uses.lead ? { releaseMask: base.releaseMask | releasableMask(rig) } : {}),
  };
  const vents = uses.gas && !sinking;
  const variant = (finsN: number, jacketVent: number): Controls => ({ ...steady, finsN, jacketVent });
  const still = [variant(0, 0), variant(0, vents ? 1 : 0), variant(0, vents ? 2 : 0)] as const;
  const kicking = [variant(KICK_N, 0), variant(KICK_N, vents ? 1 : 0), variant(KICK_N, vents ? 2 : 0)] as const;
  return (state) => {
    const set = uses.fins && state.pitchSin * way >= TURNED_SIN ? kicking : still;
    return set[vents ? ventFor(state.pitchSin) : 0];
  };
}

/** Bits of all lead that can be let go. */
export function releasableMask(rig: Rig): number {
  return rig.lead.reduce((mask, piece, i) => (piece.releasable ? mask | (1 << i) : mask), 0);
}

/** The attitude for a kick: 60° the right way, or steeper where that is commanded already. */
function kickDeg({ attitude, pitchDeg }: Controls, way: Way): number {
  const steeper = attitude === 0 && pitchDeg * way >= KICK_DEG && pitchDeg * way <= 90;
  return steeper ? pitchDeg : KICK_DEG * way;
}

/** The nearest volume that this chest can hold, m³: between residual volume and total capacity. */
export function heldBy(rig: Rig, lungM3: number): number {
  return Math.min(Math.max(lungM3, rig.lungs.residualM3), rig.lungs.totalM3);
}

/** A lung volume as controls say it, within what this chest holds. */
function lungCl(rig: Rig, volumeM3: number): number {
  return Math.floor(heldBy(rig, volumeM3) * 1e5 + 0.5);
}
