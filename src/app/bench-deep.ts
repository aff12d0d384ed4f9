import {
  ballDragM2,
  gasM3,
  gasNeutralAtJ,
  hillJ,
  netAtN,
  noReturnM,
  plunge,
  pressureAt,
  type GasBody,
  type Plunging,
  type Under,
} from '../bench/index.ts';
import type { BenchAsk, DeepBody, DeepView } from '../panels/index.ts';

const SEA_KG_PER_M3 = 1026;
const FRESH_KG_PER_M3 = 998.6;
const GRAVITY_MPS2 = 9.80665;
const AIR_PA = 101_325;
/** Depths of the tank and the flask, and where their bodies are neutral, metres. Chosen. */
const DEEP_M = 40;
const DEEP_NEUTRAL_M = 5;
const FLASK_M = 0.4;
const FLASK_NEUTRAL_M = 0.25;
const BAG: GasBody = { massKg: 1, firmM3: 6e-5, gasJ: 0, mostM3: 1.5e-3 };
const BALL: GasBody = { massKg: 1, firmM3: 1 / SEA_KG_PER_M3, gasJ: 0, mostM3: 0 };
/** A small glass bottle, its own glass of 2500 kg/m³ and 8 g. Chosen. */
const BOTTLE: GasBody = { massKg: 0.012, firmM3: 4.8e-6, gasJ: 0, mostM3: 1e-5 };
const BOTTLE_DRAG_M2 = 6e-4;
/** The hardest squeeze, pascals. Chosen: a strong hand on a plastic flask. */
const MOST_PA = 15e3;
const HILL_POINTS = 81;

interface One {
  readonly name: string;
  readonly body: GasBody;
  readonly dragM2: number;
  moving: Plunging;
}

/** Bodies that give way under pressure, in a column of water. */
export class DeepBench {
  readonly #kind: 'deep' | 'bottle';
  readonly #bottomM: number;
  readonly #density: number;
  #ones: One[] = [];
  #heldM: number | null = 0;
  #squeezePa = 0;
  #been: (readonly [number, number])[] = [];

  constructor(kind: 'deep' | 'bottle') {
    this.#kind = kind;
    this.#bottomM = kind === 'deep' ? DEEP_M : FLASK_M;
    this.#density = kind === 'deep' ? SEA_KG_PER_M3 : FRESH_KG_PER_M3;
    this.#anew();
  }

  pass(seconds: number): void {
    const passed = Math.min(seconds, 0.1);
    if (passed <= 0) return;
    if (this.#heldM === null) {
      const shaft = { under: this.#under(), bottomM: this.#bottomM };
      for (const one of this.#ones) one.moving = plunge(one.body, { ...shaft, dragM2: one.dragM2 }, one.moving, passed);
    }
    this.#note();
  }

  hear(ask: BenchAsk): void {
    if (ask.do === 'anew') this.#anew();
    else if (ask.do === 'let-go') this.#heldM = null;
    else if (ask.do === 'depth') this.#hold(ask.depthM);
    else if (ask.do === 'squeeze') this.#squeezePa = Math.min(Math.max(0, ask.pa), MOST_PA);
  }

  view(): DeepView {
    const under = this.#under();
    const bodies = this.#ones.map(({ name, body, moving }): DeepBody => {
      const { depthM, speedMps } = moving;
      const pressure = pressureAt(under, depthM);
      return {
        name,
        depthM,
        speedMps,
        netN: netAtN(body, under, depthM),
        gasM3: gasM3(body, pressure),
        firmM3: body.firmM3,
      };
    });
    const first = this.#ones[0]!;
    const at = (i: number) => (this.#bottomM * i) / (HILL_POINTS - 1);
    return {
      kind: this.#kind,
      bottomM: this.#bottomM,
      bodies,
      heldM: this.#heldM,
      squeezePa: this.#squeezePa,
      been: this.#been,
      pressurePa: pressureAt(under, first.moving.depthM),
      noReturnM: noReturnM(first.body, under),
      hillJ: Array.from({ length: HILL_POINTS }, (_, i) => hillJ(first.body, under, at(i))),
    };
  }

  #under(): Under {
    return { densityKgPerM3: this.#density, gravityMps2: GRAVITY_MPS2, surfacePa: AIR_PA + this.#squeezePa };
  }

  #anew(): void {
    this.#squeezePa = 0;
    this.#been = [];
    const still = (depthM: number) => ({ depthM, speedMps: 0 });
    const filled = (body: GasBody, depthM: number) => ({ ...body, gasJ: gasNeutralAtJ(body, this.#under(), depthM) });
    this.#ones =
      this.#kind === 'deep'
        ? [
            { name: 'bag', body: filled(BAG, DEEP_NEUTRAL_M), dragM2: ballDragM2(1e-3), moving: still(DEEP_NEUTRAL_M) },
            { name: 'steel ball', body: BALL, dragM2: ballDragM2(1e-3), moving: still(DEEP_NEUTRAL_M) },
          ]
        : [{ name: 'bottle', body: filled(BOTTLE, FLASK_NEUTRAL_M), dragM2: BOTTLE_DRAG_M2, moving: still(0.05) }];
    this.#heldM = this.#ones[0]!.moving.depthM;
    this.#note();
  }

  #hold(depthM: number): void {
    // The curve is drawn by going there: along the way, not by a jump.
    const from = this.#ones[0]!.moving.depthM;
    const count = 24;
    for (let i = 1; i <= count; i++) {
      for (const one of this.#ones) one.moving = { depthM: from + ((depthM - from) * i) / count, speedMps: 0 };
      this.#note();
    }
    this.#heldM = depthM;
  }

  /** Where the gas has been, in steps that can be seen. */
  #note(): void {
    const { body, moving } = this.#ones[0]!;
    const pressure = pressureAt(this.#under(), moving.depthM);
    const grain = this.#kind === 'deep' ? 2000 : 20;
    const place = Math.round(pressure / grain) * grain;
    if (this.#been.some(([pa]) => pa === place)) return;
    this.#been = [...this.#been, [place, gasM3(body, place)]];
  }
}
