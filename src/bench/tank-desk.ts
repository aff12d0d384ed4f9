import { Bench, STEPS_PER_S } from './bench.ts';
import type { BenchAsk, BenchSet, BenchWaterName, TankView } from './desk.ts';
import { changedSpec, dialsOf, type ThingAsk } from './dials.ts';
import type { Placed } from './placed.ts';
import { STONE_NAMES, TANK_SETS, TANK_SIZES, benchWater } from './scenes.ts';
import type { Point } from './section.ts';
import type { Tank } from './tank.ts';
import { LENGTH_M } from './thing.ts';

const { widthM: WIDTH_M, heightM: HEIGHT_M, filledM: FILLED_M } = TANK_SIZES;
/** The spout is as high as the water stands at first: whatever goes in runs over. */
const SPOUT_M = FILLED_M;
/** Where a hand holds a thing before it is let go, and how deep it holds one under, metres from the lip. */
const HAND_YM = -0.06;
const UNDER_M = 0.2;
/** What was in the water is set down on it again from so close, metres. */
const CLOSE_M = 0.004;
/** A hook hangs so far above the surface at first, metres. */
const HOOK_YM = -0.05;

/** The tank in hand: its things, what is chosen and held, and what was asked of it. */
export class TankDesk {
  #bench!: Bench;
  #set: BenchSet = 'putty';
  #water: BenchWaterName = 'fresh';
  #chosenId = 0;
  #hand: Point | null = null;
  #hookYM: number | null = null;
  #forces = true;
  #waitingS = 0;

  constructor() {
    this.#fill('putty');
  }

  /** Lets time pass, seconds; nothing is made up for after a stall. */
  pass(seconds: number): void {
    this.#waitingS = Math.min(this.#waitingS + seconds, 0.1);
    const steps = Math.floor(this.#waitingS * STEPS_PER_S);
    this.#waitingS -= steps / STEPS_PER_S;
    this.#bench.step(steps);
  }

  /** Does what is asked; whatever is not of the tank is left alone. @throws {RangeError} as the bench does, and nothing is changed then */
  hear(ask: BenchAsk): void {
    switch (ask.do) {
      case 'set':
        return this.#fill(ask.set);
      case 'anew':
        return this.#fill(this.#set);
      case 'choose':
        return this.#choose(ask.id);
      case 'next': {
        const ids = this.#bench.view().map(({ id }) => id);
        return this.#choose(ids[(ids.indexOf(this.#chosenId) + 1) % ids.length]!);
      }
      case 'take':
        return this.#take(HAND_YM);
      case 'under':
        return this.#hold({ xM: this.#chosen().at.xM, yM: this.#bench.surfaceYM + UNDER_M });
      case 'let-go':
        return this.#hold(null);
      case 'carry':
        return this.#carry(ask.byXM, ask.byYM);
      case 'hand':
        return this.#hold(ask.at);
      case 'shape':
      case 'dial':
      case 'material':
        return this.#change(ask);
      case 'water':
        this.#water = ask.water;
        this.#bench.water = benchWater(this.#water);
        return;
      case 'forces':
        this.#forces = !this.#forces;
        return;
      case 'balance':
        return this.#hang(this.#hookYM === null ? HOOK_YM : null);
      case 'hook':
        return this.#hang(Math.min(Math.max((this.#hookYM ?? HOOK_YM) + ask.byM, -0.12), HEIGHT_M - 0.06));
      case 'spout':
        this.#bench.fillTo(FILLED_M);
        return this.#bench.spout(this.#bench.tank.spoutYM === null ? SPOUT_M : null);
      default:
        return;
    }
  }

  view(): TankView {
    const { tank, water } = this.#bench;
    const things = this.#bench.view().map((one) => ({ ...one, name: this.#nameOf(one) }));
    const { spec } = this.#chosen().thing;
    return {
      widthM: WIDTH_M,
      heightM: HEIGHT_M,
      surfaceYM: this.#bench.surfaceYM,
      water: this.#water,
      densityKgPerM3: water.densityKgPerM3,
      set: this.#set,
      things,
      chosenId: this.#chosenId,
      hand: this.#hand,
      dials: dialsOf(spec),
      material: spec.kind === 'block' || spec.kind === 'odd-stone' ? spec.material : null,
      hookYM: this.#hookYM,
      spoutYM: tank.spoutYM,
      glassM3: tank.glassM2 * LENGTH_M,
      forces: this.#forces,
    };
  }

  #fill(set: BenchSet): void {
    const tank: Tank = {
      widthM: WIDTH_M,
      heightM: HEIGHT_M,
      spoutYM: null,
      waterM2: WIDTH_M * (HEIGHT_M - FILLED_M),
      glassM2: 0,
    };
    this.#bench = new Bench(tank, benchWater(this.#water));
    this.#set = set;
    this.#hookYM = null;
    const specs = TANK_SETS[set];
    const ids = specs.map((spec, i) =>
      this.#bench.add(spec, { xM: (WIDTH_M * (i + 1)) / (specs.length + 1), yM: HAND_YM }),
    );
    // All are held until one is let go: five stones wait part-way down.
    if (set === 'stones')
      for (const [i, id] of ids.entries()) {
        const at = { xM: (WIDTH_M * (i + 1)) / (ids.length + 1), yM: (FILLED_M + HEIGHT_M) / 2 };
        this.#bench.place(id, at);
        this.#bench.pull(id, at);
      }
    this.#chosenId = ids[0]!;
    if (set === 'stones') this.#hand = { xM: 0, yM: 0 };
    else this.#take(HAND_YM);
  }

  #chosen(): Placed {
    return this.#bench.view().find(({ id }) => id === this.#chosenId)!;
  }

  #choose(id: number): void {
    if (id === this.#chosenId) return;
    if (this.#hookYM !== null) this.#hang(null);
    if (this.#set !== 'stones') this.#hold(null);
    this.#chosenId = id;
  }

  /** Lifted out, dry and upright. */
  #take(yM: number): void {
    if (this.#hookYM !== null) this.#hang(null);
    const { at, thing } = this.#chosen();
    const lowestM = Math.max(...thing.hull.map((point) => point.yM));
    const to = { xM: Math.min(Math.max(at.xM, 0.12), WIDTH_M - 0.12), yM: yM - lowestM };
    this.#bench.place(this.#chosenId, to);
    this.#hold(to);
  }

  #hold(at: Point | null): void {
    this.#hand = at;
    // Stones are let go together, so that a class sees where each comes to rest.
    const ids = at === null && this.#set === 'stones' ? this.#bench.view().map(({ id }) => id) : [this.#chosenId];
    for (const id of ids) this.#bench.pull(id, at);
  }

  #carry(byXM: number, byYM: number): void {
    if (this.#hookYM !== null) return this.#hang(this.#hookYM + byYM);
    const from = this.#hand && this.#set !== 'stones' ? this.#hand : this.#chosen().at;
    this.#hold({ xM: from.xM + byXM, yM: from.yM + byYM });
  }

  #hang(hookYM: number | null): void {
    if (hookYM !== null && this.#hookYM === null) {
      this.#take(HOOK_YM);
      this.#hold(null);
    }
    this.#hookYM = hookYM;
    this.#bench.hang(this.#chosenId, hookYM);
  }

  /** Another shape, size or stuff. Putty is taken out of the water to be shaped, as one would, and set down on it again. */
  #change(ask: ThingAsk): void {
    const { spec } = this.#chosen().thing;
    const held = this.#hand !== null;
    this.#bench.change(this.#chosenId, changedSpec(spec, ask));
    const shapes = ask.do === 'shape' || (ask.do === 'dial' && spec.kind === 'putty' && ask.id !== 'mass');
    if (!shapes || this.#hookYM !== null) return;
    this.#take(held ? HAND_YM : this.#bench.surfaceYM - CLOSE_M);
    if (!held) this.#hold(null);
  }

  #nameOf({ id, thing: { spec } }: Placed): string {
    switch (spec.kind) {
      case 'putty':
        return spec.shape.hollow <= 0 ? 'lump' : spec.shape.square > 0.6 ? 'tray' : 'boat';
      case 'stone':
        return this.#set === 'stones' ? (STONE_NAMES[id - 1] ?? 'stone') : 'stone';
      case 'odd-stone':
        return spec.material === 'granite' ? 'odd stone' : `odd piece of ${spec.material}`;
      case 'block':
        return `block of ${spec.material}`;
      case 'can':
        return 'can';
    }
  }
}
