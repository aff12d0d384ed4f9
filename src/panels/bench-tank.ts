import { nothing, svg, html } from 'lit';
import type { BenchAsk, Placed, Point, TankView } from '../bench/index.ts';
import { drawnBalance, drawnGlass, drawnHand, drawnScale, drawnThing, pathOf, type Drawn } from './bench-drawn.ts';
import { coveredBy, crowded, drawnForces, drawnLabels, labelOf, pullPx } from './bench-forces.ts';
import { boxAround, frameOf, xPx, yPx, type TankFrame } from './bench-frame.ts';
import { placeLabels, type Box, type Label } from './bench-labels.ts';
import { PicturePanel } from './picture-panel.ts';
import { wish } from './wish.ts';

/** A thumb is wider than a stone: whatever lies within so much of a pointer is meant, metres. */
const THUMB_M = 0.05;

/** The tank in section: things, water, forces, words. Things are taken by pointer; keys are heard wherever the focus is. */
export class BenchTank extends PicturePanel {
  static override properties = { tank: { attribute: false } };
  declare tank: TankView | null;
  #pulls = false;
  /** Where labels stood a frame ago: they do not jump about while things move. */
  readonly #stood = new Map<string, number>();

  constructor() {
    super();
    this.tank = null;
  }

  override render() {
    const tank = this.tank;
    if (!tank) return html``;
    const { widePx, highPx } = this;
    const frame = frameOf(tank, Math.max(widePx, 1), Math.max(highPx, 1));
    this.size(frame.emPx, frame.boldPx);
    return html`<svg
      tabindex="0"
      role="application"
      aria-label="The tank. Arrow keys carry what is chosen, with Shift by five, Enter takes it and lets it go, N chooses another."
      @pointerdown=${this.#down}
      @pointermove=${this.#move}
      @pointerup=${this.#up}
      @pointercancel=${this.#up}
    >
      ${widePx > 0 ? this.#picture(tank, frame) : nothing}
    </svg>`;
  }

  #picture(tank: TankView, frame: TankFrame) {
    const { things, chosenId } = tank;
    const chosen = things.find(({ id }) => id === chosenId);
    const [left, right] = [xPx(frame, 0), xPx(frame, tank.widthM)];
    const [surface, bottom] = [yPx(frame, tank.surfaceYM), yPx(frame, tank.heightM)];
    const scale = drawnScale(frame, tank);
    const glass = drawnGlass(frame, tank, chosen);
    const balance: Drawn = chosen
      ? drawnBalance(frame, tank, chosen, tank.forces ? pullPx(frame, tank, chosen) : 0)
      : { picture: nothing, words: [] };
    const held = tank.hand && tank.hookYM === null && chosen;
    return svg`<rect class="wet" x=${left} y=${surface} width=${right - left} height=${bottom - surface}></rect>
      ${things.map(({ displaced }) => (displaced.length > 0 ? svg`<path class="displaced" d=${pathOf(frame, displaced)}></path>` : nothing))}
      <path class="surface" d="M${left} ${surface}H${right}"></path>
      ${things.map((one) => drawnThing(frame, one, one.id === chosenId))}
      <path class="glass-wall" d="M${left} ${yPx(frame, 0)}V${bottom}H${right}V${yPx(frame, 0)}"></path>
      ${scale.picture} ${glass.picture} ${balance.picture}
      ${held ? drawnHand(boxAround(frame, chosen)) : nothing}
      ${tank.forces ? things.map((one) => drawnForces(frame, tank, one)) : nothing}
      ${drawnLabels(this.#labels(frame, tank, [...scale.words, ...glass.words, ...balance.words], balance.covered ?? []))}`;
  }

  /** Words of the chosen thing are placed first, but where names are turned: these stand each on its own, and its words over them. */
  #labels(frame: TankFrame, tank: TankView, taken: readonly Box[], strings: readonly Box[]) {
    const [left, right] = [xPx(frame, 0), xPx(frame, tank.widthM)];
    const [surface, bottom] = [yPx(frame, tank.surfaceYM), yPx(frame, tank.heightM)];
    const edges = [
      { left, right, top: surface - 1, bottom: surface + 1 },
      { left, right, top: bottom - 1, bottom: bottom + 1 },
      ...[left, right].map((x) => ({ left: x - 2, right: x + 2, top: yPx(frame, 0), bottom })),
    ];
    const order = crowded(frame, tank) ? Infinity : -1;
    const rank = ({ id }: Placed) => (id === tank.chosenId ? order : id);
    const labels = [...tank.things]
      .sort((a, b) => rank(a) - rank(b))
      .map((one) => labelOf(frame, tank, one))
      .filter((one): one is Label => one !== null);
    const covered = [...strings, ...edges, ...tank.things.flatMap((one) => coveredBy(frame, tank, one))];
    const within = { left: 1, top: 1, right: frame.widePx - 1, bottom: frame.highPx - 1 };
    return placeLabels(labels, within, taken, covered, this.#stood);
  }

  #ask(ask: BenchAsk): void {
    wish(this, { kind: 'bench', ask });
  }

  /** Where a pointer is in the tank, metres. */
  #at(event: PointerEvent): Point {
    const { left, top } = this.querySelector('svg')!.getBoundingClientRect();
    const { originXPx, lipYPx, pxPerM } = frameOf(this.tank!, this.widePx, this.highPx);
    return { xM: (event.clientX - left - originXPx) / pxPerM, yM: (event.clientY - top - lipYPx) / pxPerM };
  }

  readonly #down = (event: PointerEvent): void => {
    const at = this.#at(event);
    const near = nearest(this.tank!, at);
    if (!near) return;
    this.querySelector('svg')!.setPointerCapture(event.pointerId);
    this.#pulls = true;
    this.#ask({ do: 'choose', id: near.id });
    this.#ask({ do: 'hand', at });
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.#pulls) this.#ask({ do: 'hand', at: this.#at(event) });
  };

  readonly #up = (): void => {
    if (!this.#pulls) return;
    this.#pulls = false;
    this.#ask({ do: 'let-go' });
  };
}
customElements.define('bench-tank', BenchTank);

function nearest({ things }: TankView, at: Point): Placed | null {
  let best: Placed | null = null;
  let bestM = THUMB_M;
  for (const one of things) {
    const size = Math.max(...one.thing.hull.map(({ xM, yM }) => Math.hypot(xM, yM)));
    const away = Math.max(0, Math.hypot(one.at.xM - at.xM, one.at.yM - at.yM) - size);
    if (away < bestM) [best, bestM] = [one, away];
  }
  return best;
}
