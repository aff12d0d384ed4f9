import Matter from 'matter-js';

/** A piece of lead that is let go: place and motion of that moment, SI, depth positive down, `besideM` positive to the right. */
export interface Drop {
  readonly massKg: number;
  readonly densityKgPerM3: number;
  /** Sides of the block as it is drawn, metres: they count where it touches something, its volume where it moves through water. */
  readonly longM: number;
  readonly highM: number;
  readonly depthM: number;
  readonly besideM: number;
  /** Downward. */
  readonly speedMps: number;
  /** Turn of the piece, radians, and how fast it turns, rad/s. */
  readonly turn: number;
  readonly turnRadps: number;
}

/** The water that it falls through, and the ground under it. */
export interface FallWater {
  readonly densityKgPerM3: number;
  readonly gravityMps2: number;
  readonly groundM: number;
}

/** Where a piece is: its middle, and how it is turned, radians. */
export interface Pose {
  readonly besideM: number;
  readonly depthM: number;
  readonly turn: number;
}

/** Drag of a block that tumbles, on the face of a cube of its volume. @source Hoerner, Fluid-Dynamic Drag, a cube face on, recalled */
const DRAG = 1.05;
/** Water that moves with a cube, as a share of what it displaces. @source Brennen, A Review of Added Mass, recalled */
const ADDED = 0.67;
/** How fast a turn dies away, 1/s, and how strongly a block at full speed turns broadside on to its way, 1/s². Practice. */
const TURN_DAMPING = 1.5;
const RIGHTING = 14;

/** Steps a second: at fewer the bodies of the library sink into each other. */
const STEPS_PER_S = 240;
const STEP_MS = 1000 / STEPS_PER_S;
/** The library's lengths: its contacts let bodies overlap by a twentieth of one, so one is a millimetre. */
const UNITS_PER_M = 1000;
/** A speed of the library is counted for a sixtieth of a second. */
const SPEED_PER_MPS = UNITS_PER_M / 60;
/** An acceleration of the library is counted per ms². */
const ACCELERATION_PER_MPS2 = UNITS_PER_M / 1e6;
/** Slower than this, m/s and rad/s, on the ground, for so many steps: it lies. A piece that never does is stopped after the longest fall. */
const STILL = 0.01;
const STILL_STEPS = 30;
const LONGEST_S = 120;

/**
 * Speed at which a block sinks in the end, m/s: v = √(2 (ρ − ρw) V g / (ρw c A)), A the face of a cube of its volume.
 * @source balance of weight, lift and drag, derived
 */
export function terminalMps(
  { massKg, densityKgPerM3 }: Pick<Drop, 'massKg' | 'densityKgPerM3'>,
  water: Pick<FallWater, 'densityKgPerM3' | 'gravityMps2'>,
): number {
  const sideM = Math.cbrt(massKg / densityKgPerM3);
  return Math.sqrt((2 * (densityKgPerM3 / water.densityKgPerM3 - 1) * water.gravityMps2 * sideM) / DRAG);
}

/**
 * The way of a piece of lead to the ground and its lying there, for the eye alone: nothing of it comes back to the diver. The
 * same drop gives the same way; it is reckoned once and looked up from then on.
 */
export class Sinking {
  readonly #drop: Drop;
  readonly #water: FallWater;
  readonly #engine: Matter.Engine;
  readonly #body: Matter.Body;
  readonly #poses: Pose[];
  readonly #terminalMps: number;
  #stillSteps = 0;
  #lies = false;

  /** @param lying where pieces lie that came down before: they are hit and do not move any more */
  constructor(drop: Drop, water: FallWater, lying: readonly { readonly drop: Drop; readonly pose: Pose }[] = []) {
    this.#drop = drop;
    this.#water = water;
    this.#terminalMps = terminalMps(drop, water);
    this.#engine = Matter.Engine.create({ gravity: { x: 0, y: 0, scale: 0 }, enableSleeping: false });
    const shared = { friction: 0.6, frictionStatic: 0.9, frictionAir: 0, restitution: 0.05 };
    const blockAt = ({ besideM, depthM, turn }: Pose, { longM, highM }: Drop, isStatic: boolean) => {
      const at = [besideM, depthM, longM, highM].map((m) => m * UNITS_PER_M) as [number, number, number, number];
      const body = Matter.Bodies.rectangle(...at, { ...shared, isStatic });
      Matter.Body.setAngle(body, turn);
      return body;
    };
    this.#poses = [{ besideM: drop.besideM, depthM: drop.depthM, turn: drop.turn }];
    this.#body = blockAt(this.#poses[0]!, drop, false);
    Matter.Body.setMass(this.#body, drop.massKg);
    Matter.Body.setVelocity(this.#body, { x: 0, y: drop.speedMps * SPEED_PER_MPS });
    Matter.Body.setAngularVelocity(this.#body, drop.turnRadps / 60);
    const thickM = 1;
    const ground = Matter.Bodies.rectangle(
      drop.besideM * UNITS_PER_M,
      (water.groundM + thickM / 2) * UNITS_PER_M,
      20 * UNITS_PER_M,
      thickM * UNITS_PER_M,
      { ...shared, isStatic: true },
    );
    // The order in which bodies are added is part of what comes out.
    const before = lying.map((piece) => blockAt(piece.pose, piece.drop, true));
    Matter.Composite.add(this.#engine.world, [ground, ...before, this.#body]);
  }

  /** Where it is so many seconds after it was let go. */
  at(ageS: number): Pose {
    const step = Math.max(0, Math.min(ageS, LONGEST_S)) * STEPS_PER_S;
    while (!this.#lies && this.#poses.length <= step + 1) this.#step();
    const low = Math.min(Math.floor(step), this.#poses.length - 1);
    const a = this.#poses[low]!;
    const b = this.#poses[Math.min(low + 1, this.#poses.length - 1)]!;
    const share = step - Math.floor(step);
    const between = (name: keyof Pose) => a[name] + (b[name] - a[name]) * share;
    return { besideM: between('besideM'), depthM: between('depthM'), turn: between('turn') };
  }

  /** Where it lies in the end. */
  rest(): Pose {
    return this.at(LONGEST_S);
  }

  #step(): void {
    const { massKg, densityKgPerM3, longM } = this.#drop;
    const { densityKgPerM3: waterDensity, gravityMps2 } = this.#water;
    const volumeM3 = massKg / densityKgPerM3;
    const body = this.#body;
    const velocity = Matter.Body.getVelocity(body);
    const [acrossMps, downMps] = [velocity.x / SPEED_PER_MPS, velocity.y / SPEED_PER_MPS];
    const dragNPerMps = 0.5 * waterDensity * DRAG * Math.cbrt(volumeM3) ** 2 * Math.hypot(acrossMps, downMps);
    // Water that moves with the piece takes its share of every force.
    const share = massKg / (massKg + ADDED * waterDensity * volumeM3);
    const scale = share * ACCELERATION_PER_MPS2;
    body.force.x = -dragNPerMps * acrossMps * scale;
    body.force.y = ((massKg - waterDensity * volumeM3) * gravityMps2 - dragNPerMps * downMps) * scale;
    const turned = (RIGHTING * Math.sin(2 * body.angle) * downMps * Math.abs(downMps)) / this.#terminalMps ** 2;
    const turnRadps = Matter.Body.getAngularVelocity(body) * 60;
    Matter.Body.setAngularVelocity(body, (turnRadps - (TURN_DAMPING * turnRadps + turned) / STEPS_PER_S) / 60);
    Matter.Engine.update(this.#engine, STEP_MS);
    const depthM = body.position.y / UNITS_PER_M;
    this.#poses.push({ besideM: body.position.x / UNITS_PER_M, depthM, turn: body.angle });
    const isSlow =
      Math.hypot(body.velocity.x, body.velocity.y) / SPEED_PER_MPS < STILL &&
      Math.abs(body.angularVelocity) * 60 < STILL;
    this.#stillSteps = isSlow && depthM > this.#water.groundM - 3 * longM ? this.#stillSteps + 1 : 0;
    this.#lies = this.#stillSteps >= STILL_STEPS || this.#poses.length > LONGEST_S * STEPS_PER_S;
  }
}
