import { gasM3, netAtN, pressureAt, type GasBody, type Under } from './squeezed.ts';

/** A body that goes up and down a tall tank. */
export interface Plunging {
  /** Of its middle, metres. */
  readonly depthM: number;
  /** Downward, m/s. */
  readonly speedMps: number;
}

/** What a plunge is like besides the body. */
export interface Shaft {
  readonly under: Under;
  readonly bottomM: number;
  /** Drag coefficient times area, m². */
  readonly dragM2: number;
}

/** Water moved along with a ball, as a share of what it displaces: one half (Lamb 1932, §92, closed form). */
const ADDED_BALL = 0.5;
/** Longest step of the Runge-Kutta rule, seconds: a bag's fastest growth is some 0.5/s. */
const STEP_S = 1 / 60;

/** Drag area of a ball of a volume, m²: coefficient 0.47 (textbooks of fluid mechanics, below the crisis; recalled) times πr². */
export function ballDragM2(volumeM3: number): number {
  return 0.47 * Math.PI * ((3 * volumeM3) / (4 * Math.PI)) ** (2 / 3);
}

/** The body after some seconds of being left alone; surface and bottom stop it. Fourth-order Runge-Kutta. */
export function plunge(body: GasBody, shaft: Shaft, from: Plunging, seconds: number): Plunging {
  const count = Math.max(1, Math.ceil(seconds / STEP_S));
  const h = seconds / count;
  let { depthM: z, speedMps: v } = from;
  for (let i = 0; i < count; i++) {
    const a1 = fall(body, shaft, z, v);
    const a2 = fall(body, shaft, z + (h / 2) * v, v + (h / 2) * a1);
    const a3 = fall(body, shaft, z + (h / 2) * (v + (h / 2) * a1), v + (h / 2) * a2);
    const a4 = fall(body, shaft, z + h * (v + (h / 2) * a2), v + h * a3);
    z += h * v + ((h * h) / 6) * (a1 + a2 + a3);
    v += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    if (z <= 0 || z >= shaft.bottomM) {
      z = Math.min(Math.max(z, 0), shaft.bottomM);
      v = 0;
    }
  }
  return { depthM: z, speedMps: v };
}

function fall(body: GasBody, { under, dragM2 }: Shaft, depthM: number, speedMps: number): number {
  const rho = under.densityKgPerM3;
  const displacedM3 = body.firmM3 + gasM3(body, pressureAt(under, depthM));
  const drag = 0.5 * rho * dragM2 * speedMps * Math.abs(speedMps);
  return (-netAtN(body, under, depthM) - drag) / (body.massKg + ADDED_BALL * rho * displacedM3);
}
