import { ventFor } from '../dive/index.ts';
import { rib, type Rib, type Spot } from './figure-shape.ts';
import type { StageView } from './view.ts';
import { LINE_AHEAD_M } from './water.ts';

/** Kicks a second at full thrust. */
const KICKS_PER_S = 0.9;
const FULL_THRUST_N = 45;

/** How the limbs stand: angles in radians, a leg's toward the belly positive. */
export interface Pose {
  readonly near: LegPose;
  readonly far: LegPose;
  readonly hand: Spot;
  /** Where the diver looks, from the axis of the body toward the belly. */
  readonly gaze: number;
}

interface LegPose {
  readonly thigh: number;
  readonly knee: number;
  /** Bend of the blade, toward the back positive. */
  readonly blade: number;
}

/** The pose of a moment. Still water, still fins: they move when thrust is on, and their blades bend against it. */
export function poseOf({ state, controls, nowS, reducedMotion }: StageView): Pose {
  const share = Math.min(Math.max(state.thrustN / FULL_THRUST_N, -1), 1);
  const phase = reducedMotion ? 0.9 : nowS * KICKS_PER_S * 2 * Math.PI;
  const upright = Math.max(0, state.pitchSin);
  const holds = controls.holdLine === 1;
  return {
    near: leg(share, phase, 0.16 - 0.1 * upright, 0.3 - 0.12 * upright),
    far: leg(share, phase + Math.PI, 0.02, 0.26 - 0.1 * upright),
    // On the line the hand lies straight ahead of the chest, whichever way the body points.
    hand: holds
      ? { x: LINE_AHEAD_M * state.pitchCos + 0.02, y: LINE_AHEAD_M * state.pitchSin + 0.02 }
      : { x: 0.45 - 0.22 * upright, y: 0.2 + 0.07 * upright },
    gaze: 0.5 + 0.95 * upright,
  };
}

function leg(share: number, phase: number, thigh: number, knee: number): LegPose {
  const swing = Math.abs(share);
  return {
    thigh: thigh + 0.3 * swing * Math.sin(phase),
    knee: Math.max(0.02, knee + 0.24 * swing * Math.sin(phase - 1.1)),
    blade: 0.05 + 0.5 * share * Math.cos(phase - 0.4),
  };
}

/** A key that changes when a pose looks different. */
export function poseKey({ near, far, hand, gaze }: Pose): string {
  const angles = [near.thigh, near.knee, near.blade, far.thigh, far.knee, far.blade, gaze, hand.x * 2, hand.y * 2];
  return angles.map((angle) => Math.round(angle * 60)).join(' ');
}

const HIP: Spot = { x: -0.36, y: 0.012 };
const THIGH_M = 0.4;
const SHANK_M = 0.4;

/** The ribs of a leg, and of its fin, and where the ankle is. */
export function legRibs(pose: LegPose): { leg: Rib[]; fin: Rib[]; ankle: Spot } {
  const along = (from: Spot, angle: number, metres: number): Spot => ({
    x: from.x - Math.cos(angle) * metres,
    y: from.y + Math.sin(angle) * metres,
  });
  const shank = pose.thigh - pose.knee;
  const knee = along(HIP, pose.thigh, THIGH_M);
  const ankle = along(knee, shank, SHANK_M);
  const mid = along(HIP, pose.thigh, THIGH_M * 0.45);
  const calf = along(knee, shank, SHANK_M * 0.35);
  const foot = along(ankle, shank - 0.08, 0.13);
  const blade = [0.1, 0.2, 0.31].map((metres, i) => along(foot, shank - 0.08 - (pose.blade * (i + 1)) / 3, metres));
  const reaches = [
    rib(HIP.x, HIP.y, 0.1),
    rib(mid.x, mid.y, 0.083),
    rib(knee.x, knee.y, 0.056, 0.06),
    rib(calf.x, calf.y, 0.054, 0.062),
    rib(ankle.x, ankle.y, 0.036),
  ];
  const fin = [
    rib(ankle.x, ankle.y, 0.045),
    rib(foot.x, foot.y, 0.045),
    rib(blade[0]!.x, blade[0]!.y, 0.036),
    rib(blade[1]!.x, blade[1]!.y, 0.03),
    rib(blade[2]!.x, blade[2]!.y, 0.018),
  ];
  return { leg: reaches, fin, ankle };
}

/** The ribs of trunk and neck. */
export const TRUNK: readonly Rib[] = [
  rib(-0.44, 0.012, 0.07, 0.07),
  rib(-0.33, 0.005, 0.118, 0.1),
  rib(-0.17, 0, 0.102, 0.112),
  rib(0.03, 0, 0.122, 0.136),
  rib(0.2, -0.004, 0.122, 0.112),
  rib(0.31, -0.014, 0.072, 0.066),
  rib(0.4, -0.02, 0.058, 0.056),
];

export const HEAD: Spot = { x: 0.505, y: -0.03 };
export const SHOULDER: Spot = { x: 0.21, y: 0.03 };

/** The vents of the jacket. */
export const SHOULDER_VENT: Spot = { x: 0.27, y: -0.16 };
export const REAR_VENT: Spot = { x: -0.33, y: -0.19 };

/** The vent that a diver of an attitude lets gas out by. */
export function ventSpot(pitchSin: number): Spot {
  return ventFor(pitchSin) === 1 ? SHOULDER_VENT : REAR_VENT;
}
