import { vesselMol } from '../gas/index.ts';
import { STANDARD_PRESSURE_PA, pressurePa } from '../water/index.ts';
import { midBreathM3, type Rig } from './rig.ts';
import { lungMol } from './volumes.ts';

/** All that the forces on a diver depend on. Attitude is a unit vector: (1, 0) level face down, sine 1 head up. */
export interface Instant {
  depthM: number;
  pitchCos: number;
  pitchSin: number;
  lungM3: number;
  lungMol: number;
  jacketMol: number;
  suitMol: number;
  loopMol: number;
  cylinderMol: number[];
  /** Bit i is set when lead piece i has been let go. */
  releasedMask: number;
}

/** What a person says of a moment; every left-out value comes from the setup. Volumes at the depth, pressure gauge. */
export interface InstantWish {
  readonly depthM: number;
  readonly lungM3?: number;
  readonly jacketM3?: number;
  readonly suitGasM3?: number;
  readonly loopM3?: number;
  /** For every cylinder. */
  readonly cylinderBar?: number;
}

/**
 * The moment at a depth, level, with the volumes wished for; lungs left out stand at mid-breath, gases at the setup's start.
 * @throws {RangeError} when depthM is negative or not finite, or a pressure lies outside the real-gas fit
 */
export function instantOf(rig: Rig, wish: InstantWish): Instant {
  const pressure = pressurePa(rig.column, wish.depthM);
  const mol = (volumeM3: number) => (volumeM3 * pressure) / rig.gasJPerMol;
  const lungVolume = rig.lungs.open ? (wish.lungM3 ?? midBreathM3(rig)) : 0;
  const bar = wish.cylinderBar;
  return {
    depthM: wish.depthM,
    pitchCos: 1,
    pitchSin: 0,
    lungM3: lungVolume,
    lungMol: lungMol(rig, lungVolume, pressure),
    jacketMol: mol(wish.jacketM3 ?? rig.jacket.startM3),
    suitMol: rig.drysuit ? mol(wish.suitGasM3 ?? rig.drysuit.startM3) : 0,
    loopMol: rig.loop ? mol(wish.loopM3 ?? rig.loop.startM3) : 0,
    cylinderMol: rig.vessels.map((vessel) =>
      bar === undefined
        ? vessel.fillMol
        : vesselMol(bar * 1e5 + STANDARD_PRESSURE_PA, vessel.waterM3, rig.waterTemperatureK),
    ),
    releasedMask: 0,
  };
}
