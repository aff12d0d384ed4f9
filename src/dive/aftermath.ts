import { HEAD_OUT_M, lungOverpressurePa, suitSqueezePa, type Rig } from '../diver/index.ts';
import { vesselMol } from '../gas/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { Controls } from './controls.ts';
import { FLAG, LUNG_CRITICAL_PA, LUNG_WARN_PA, SQUEEZE_PA, pushTurns, type DiveEvent } from './events.ts';
import type { ValveState } from './flows.ts';
import { handOver } from './hand-lead.ts';
import { solidSums, type DiveState } from './state.ts';

/** How far the body reaches below mid-chest, level and upright, metres. Practice. */
const BELOW_LEVEL_M = 0.25;
const BELOW_UPRIGHT_M = 1.3;
/** Share of the loop's least volume under which it is said to be short. Practice. */
const LOOP_SHORT = 0.97;

/** How far the body reaches below mid-chest at an attitude, metres: from level to upright by sin² of pitch. */
function reachM(pitchSin: number): number {
  return BELOW_LEVEL_M + (BELOW_UPRIGHT_M - BELOW_LEVEL_M) * pitchSin * pitchSin;
}

/** Whether a diver at a depth has the ledge under him: it is there, and he is above it. */
export function isAboveLedge(rig: Rig, c: Controls, depthM: number): boolean {
  return rig.ledgeM !== null && c.ledge === 1 && depthM <= rig.ledgeM - BELOW_LEVEL_M;
}

/** Depth of mid-chest at which the body touches the floor under it: the ledge for a diver above it, else the bottom. */
export function floorDepthM(rig: Rig, c: Controls, fromDepthM: number, pitchSin: number): number {
  const floor = isAboveLedge(rig, c, fromDepthM) ? rig.ledgeM! : rig.bottomM;
  return floor - reachM(pitchSin);
}

/** Inelastic contact: no deeper than the floor and no speed into it. Logs touching and lifting off. */
export function contact(rig: Rig, s: DiveState, floorM: number, events: DiveEvent[] | undefined): void {
  if (s.depthM >= floorM) {
    const onLedge = rig.ledgeM !== null && floorM < rig.bottomM - reachM(s.pitchSin);
    if (s.resting === 0)
      events?.push({
        tick: s.tick,
        kind: onLedge ? 'ledge-touched' : 'bottom-touched',
        speedMps: Math.max(0, s.speedMps),
      });
    s.resting = onLedge ? 2 : 1;
    s.depthM = floorM;
    s.speedMps = Math.min(0, s.speedMps);
    return;
  }
  // A breath in lifts the chest by a hair: only a centimetre of water under the body ends the contact.
  if (s.depthM < floorM - 0.01) {
    s.resting = 0;
    events?.push({ tick: s.tick, kind: 'lifted-off' });
  }
}

/** What goes at the beginning of a tick: lead that is let go, gas that is lost. What went stays gone. */
export function letGo(rig: Rig, s: DiveState, c: Controls, events: DiveEvent[] | undefined): void {
  if ((c.releaseMask & ~s.releasedMask) !== 0) release(rig, s, c.releaseMask, events);
  if (c.handLead !== 0) handOver(rig, s, c, events);
  if (c.gasLeftBar !== 0) loseGas(rig, s, c.gasLeftBar, events);
}

/** Leaves no cylinder more than a gauge pressure, bar; the rest has gone into the water, and its mass with it. */
function loseGas(rig: Rig, s: DiveState, leftBar: number, events: DiveEvent[] | undefined): void {
  let lostMol = 0;
  rig.vessels.forEach(({ waterM3 }, i) => {
    const leftMol = vesselMol(STANDARD_PRESSURE_PA + leftBar * 1e5, waterM3, rig.waterTemperatureK);
    const overMol = s.cylinderMol[i]! - leftMol;
    if (overMol <= 0) return;
    s.cylinderMol[i] = leftMol;
    lostMol += overMol;
  });
  if (lostMol === 0) return;
  s.bubbleMol += lostMol;
  s.calmUntil = 0;
  events?.push({ tick: s.tick, kind: 'gas-lost', massKg: lostMol * rig.kgPerMol });
}

/** Lets go the releasable pieces of lead that the mask names and that are still worn. */
function release(rig: Rig, s: DiveState, mask: number, events: DiveEvent[] | undefined): void {
  let gone = s.releasedMask;
  rig.lead.forEach((piece, i) => {
    if ((mask & (1 << i)) === 0 || (gone & (1 << i)) !== 0 || !piece.releasable) return;
    gone |= 1 << i;
    events?.push({ tick: s.tick, kind: 'lead-released', piece: i + 1, massKg: piece.massKg });
  });
  if (gone === s.releasedMask) return;
  s.releasedMask = gone;
  s.calmUntil = 0;
  Object.assign(s, solidSums(rig, gone));
}

/** The conditions that last at the end of a tick, as flag bits. */
export function lastingFlags(
  rig: Rig,
  s: DiveState,
  c: Controls,
  at: ValveState,
  closed: boolean,
  gives: boolean,
  flags: number,
): number {
  const { ambientPa } = at;
  let out = flags;
  if (s.depthM < HEAD_OUT_M) out |= FLAG.headOut;
  if (closed) {
    const over = lungOverpressurePa(rig, s.lungMol, s.lungM3, ambientPa);
    if (over > LUNG_WARN_PA) out |= FLAG.overpressure;
    if (over > LUNG_CRITICAL_PA) out |= FLAG.critical;
    if (over < -SQUEEZE_PA) out |= FLAG.lungSqueeze;
  }
  if (!gives) {
    out |= FLAG.regulatorEmpty;
    if (c.jacketAdd === 1 || c.suitAdd === 1) out |= FLAG.inflatorDead;
  }
  if (rig.drysuit && suitSqueezePa(rig, s.suitMol, ambientPa) > SQUEEZE_PA) out |= FLAG.suitSqueeze;
  if (rig.loop) {
    // The diluent valve holds the volume about the least one: only a clear shortfall is said, and only its end ends it.
    const least = rig.loop.minimumM3 * ((s.flags & FLAG.loopLow) !== 0 ? 1 : LOOP_SHORT);
    if (s.loopMol * rig.gasJPerMol < ambientPa * least) out |= FLAG.loopLow;
  }
  return out;
}

/** Logs the conditions that began or ended on this tick. */
export function logTurns(events: DiveEvent[], s: DiveState, flags: number): void {
  pushTurns(events, s.tick, s.flags, flags, s.speedMps);
}
