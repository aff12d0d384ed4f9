import { Container, Graphics } from 'pixi.js';
import { doingsOf, type Doings } from './doings.ts';
import { TRUNK } from './figure-pose.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { crossesLine } from './line-crossed.ts';
import { Plate } from './plate.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Folds of a suit that is pressed to the body, pairs of short slanted strokes: where along it, metres headward. */
const FOLDS = [-1.0, -0.86, -0.72, -0.58, -0.4, -0.24, -0.08, 0.08, 0.22] as const;
/** Most words at once: the gravest. */
const MOST_WORDS = 2;

/** What happens to the diver's gas, on the figure and in a word near it. */
export class DoingsLayer {
  /** Turns with the figure. */
  readonly root = new Container();
  readonly words: Plate;
  readonly #style: Style;
  readonly #g = new Graphics();
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.words = new Plate(style, { bold: true });
    this.root.addChild(this.#g);
  }

  /** @param figure the part of the page that the figure takes */
  draw(view: StageView, frame: Frame, figure: Box, taken: Taken): void {
    const doings = doingsOf(view);
    const px = frame.pxPerM * frame.enlarged;
    const key = `${px} ${JSON.stringify([doings.hoses, doings.spouts])} ${doings.suitSqueezed} ${doings.lungsStretched} ${doings.lungsStretched ? lungKey(view) : ''}`;
    if (key !== this.#key) this.#build(doings, view, px);
    this.#key = key;
    this.root.position.set(frame.nowX, depthToY(frame, view.depthM));
    this.root.rotation = -Math.atan2(view.state.pitchSin, view.state.pitchCos);
    this.#say(doings.words.slice(0, MOST_WORDS).join(', '), figure, view, frame, taken);
  }

  /** Under the figure or over it, behind the chest, where the line ahead leaves room. */
  #say(said: string, figure: Box, view: StageView, frame: Frame, taken: Taken): void {
    if (said === '') return this.words.show(undefined);
    const { unit } = this.#style;
    const [width, height] = this.words.say(said);
    const gap = 4 * unit;
    const lefts = [
      frame.nowX - width - gap,
      (figure.left + frame.nowX - width) / 2,
      figure.left,
      frame.nowX + gap,
      figure.left - width - gap,
    ];
    const tops: number[] = [];
    for (let i = 0; i < 7; i++)
      tops.push(figure.bottom + gap + i * height * 0.7, figure.top - gap - height * (1 + i * 0.7));
    const places = tops.flatMap((top) =>
      lefts.map((left): Box => ({ left, top, right: left + width, bottom: top + height })),
    );
    const box = taken.first(places.filter((place) => !crossesLine(place, view, frame))) ?? taken.first(places);
    this.words.show(box);
    if (box) taken.boxes.push(box);
  }

  #build({ hoses, spouts, suitSqueezed, lungsStretched }: Doings, view: StageView, px: number): void {
    const { tokens, unit } = this.#style;
    const g = this.#g.clear();
    for (const [from, one, two, to] of hoses)
      for (const [width, color] of [
        [Math.max(5 * unit, 0.05 * px), tokens.ink],
        [Math.max(2.6 * unit, 0.03 * px), tokens.gas],
      ] as const)
        g.moveTo(from.x * px, from.y * px)
          .bezierCurveTo(one.x * px, one.y * px, two.x * px, two.y * px, to.x * px, to.y * px)
          .stroke({ width, color, cap: 'round' });
    // Gas that leaves goes up, whichever way the body points.
    const { pitchCos, pitchSin } = view.state;
    const up = { x: pitchSin, y: -pitchCos };
    for (const { x, y } of spouts)
      [0.035, 0.047, 0.06].forEach((radius, i) => {
        const away = 0.02 + i * 0.085;
        g.circle((x + up.x * away) * px, (y + up.y * away) * px, radius * px)
          .fill(tokens.gas)
          .stroke({ width: 1.4 * unit, color: tokens.ink });
      });
    if (suitSqueezed) this.#folds(g, px);
    if (lungsStretched) this.#stretched(g, view, px);
  }

  #folds(g: Graphics, px: number): void {
    const { tokens, unit } = this.#style;
    FOLDS.forEach((x, i) => {
      const [belly, back] = x < -0.5 ? [0.07, -0.06] : [0.11, -0.1];
      const y = i % 2 === 0 ? belly : back;
      const inward = -Math.sign(y) * 0.06;
      for (const beside of [0, 0.035])
        g.moveTo((x + beside) * px, y * px).lineTo((x + beside + 0.025) * px, (y + inward) * px);
    });
    g.stroke({ width: 1.8 * unit, color: tokens.ink, cap: 'round' });
  }

  /** Lungs too full are doubled, as a line too steep is. */
  #stretched(g: Graphics, { state }: StageView, px: number): void {
    const { tokens, unit } = this.#style;
    const half = 0.155 * Math.sqrt(state.lungM3 / 4e-3) + 0.03;
    const widest = TRUNK[3]!;
    g.ellipse(0.075 * px, 0.005 * px, half * px, Math.min(widest.belly, half * 0.55) * px).stroke({
      width: 2.6 * unit,
      color: tokens.ink,
    });
  }
}

function lungKey({ state }: StageView): number {
  return Math.round(state.lungM3 * 2e4);
}
