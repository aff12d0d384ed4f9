import type { BenchAsk, DeepBody, DeepView } from './desk.ts';
import { ballDragM2, plunge, type Plunging } from './plunge.ts';
import { COLUMNS, columnBody, underIn, type Column, type ColumnId } from './scenes.ts';
import { gasM3, hillJ, netAtN, noReturnM, pressureAt, type GasBody, type Under } from './squeezed.ts';

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

/** The deep tank or the flask in hand: bodies that give way under pressure, in a column of water. */
export class DeepDesk {
  readonly #kind: ColumnId;
  readonly #column: Column;
  #ones: One[] = [];
  #heldM: number | null = 0;
  #squeezePa = 0;
  #been: (readonly [number, number])[] = [];

  constructor(kind: ColumnId) {
    this.#kind = kind;
    this.#column = COLUMNS[kind];
    this.#anew();
  }

  pass(seconds: number): void {
    const passed = Math.min(seconds, 0.1);
    if (passed <= 0) return;
    if (this.#heldM === null) {
      const shaft = { under: this.#under(), bottomM: this.#column.bottomM };
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
    const at = (i: number) => (this.#column.bottomM * i) / (HILL_POINTS - 1);
    return {
      kind: this.#kind,
      bottomM: this.#column.bottomM,
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
    return underIn(this.#kind, this.#squeezePa);
  }

  #anew(): void {
    this.#squeezePa = 0;
    this.#been = [];
    const moving = { depthM: this.#column.firstM, speedMps: 0 };
    const litreDragM2 = ballDragM2(1e-3);
    this.#ones =
      this.#kind === 'deep'
        ? [
            { name: 'bag', body: columnBody('bag'), dragM2: litreDragM2, moving },
            { name: 'steel ball', body: columnBody('ball'), dragM2: litreDragM2, moving },
          ]
        : [{ name: 'bottle', body: columnBody('bottle'), dragM2: BOTTLE_DRAG_M2, moving }];
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
