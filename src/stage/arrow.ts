import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { labelOf, put } from './words.ts';

/** A kilogram-force, newtons. @source BIPM: SI brochure, recalled */
const KGF_N = 9.80665;
/** Within this the diver is neutral, kgf. @source look: colour and words */
const NEUTRAL_KGF = 0.1;
/** Length of the arrow, pixels a kgf, and the force beyond which it grows no more. */
const PX_PER_KGF = 46;
const MOST_KGF = 2.5;

/** What a net force is called. */
export function wordOf(netKgf: number): 'light' | 'heavy' | 'neutral' {
  return Math.abs(netKgf) <= NEUTRAL_KGF ? 'neutral' : netKgf > 0 ? 'light' : 'heavy';
}

/** The net force: the only arrow there is. Up, blue and light; down, vermilion and heavy; none when neutral. */
export class ForceArrow {
  readonly root = new Container();
  readonly #style: Style;
  readonly #arrow = new Graphics();
  readonly #words: Record<'light' | 'heavy' | 'neutral', Text>;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    const { tokens } = style;
    const word = (text: string, colour: number) => {
      const label = labelOf(style, { bold: true, colour, anchorX: 1, size: 1.05 });
      label.text = text;
      return label;
    };
    this.#words = {
      light: word('light', tokens.forceUp),
      heavy: word('heavy', tokens.forceDown),
      neutral: word('neutral', tokens.ink),
    };
    this.root.addChild(this.#arrow, ...Object.values(this.#words));
  }

  draw({ state, depthM, forceArrow }: StageView, frame: Frame, taken: Taken): void {
    this.root.visible = forceArrow;
    if (!forceArrow) return;
    const { unit, textPx, heightPx } = this.#style;
    const kgf = state.netN / KGF_N;
    const word = wordOf(kgf);
    const shown = word === 'neutral' ? 0 : Math.max(-MOST_KGF, Math.min(MOST_KGF, kgf));
    const key = shown.toFixed(2);
    if (key !== this.#key) this.#build(Number(key));
    this.#key = key;
    const px = frame.pxPerM * frame.enlarged;
    // The arrow starts off the body, on the side to which it points, behind the chest, where the line ahead leaves room.
    const sideways = -0.2 * state.pitchCos - (Math.abs(state.pitchSin) > 0.6 ? 0.42 * state.pitchSin : 0);
    const upright = state.pitchSin * state.pitchSin;
    const clear = (kgf > 0 ? -0.38 + 0.3 * upright : 0.27 - 0.2 * upright) * px;
    const x = frame.nowX + sideways * px;
    // The tip stays in the picture: the arrow would rather move than lie about its length.
    const length = lengthPx(Number(key), unit);
    const foot = depthToY(frame, depthM) + clear;
    const y = kgf > 0 ? Math.max(foot, textPx * 2.3 + length) : Math.min(foot, heightPx - 4 * unit - length);
    this.#arrow.position.set(x, y);
    for (const [name, label] of Object.entries(this.#words)) {
      label.visible = name === word;
      if (!label.visible) continue;
      const middle = y - Math.sign(kgf) * textPx * 0.7;
      put(label, x - 13 * unit, middle);
      const half = Math.max(textPx * 0.7, length);
      taken.boxes.push({
        left: x - 13 * unit - label.width,
        top: middle - textPx * 0.7,
        right: x + 12 * unit,
        bottom: middle + textPx * 0.7,
      });
      if (length > 0)
        taken.boxes.push({
          left: x - 12 * unit,
          top: y - (kgf > 0 ? half : 0),
          right: x + 12 * unit,
          bottom: y + (kgf > 0 ? 0 : half),
        });
    }
  }

  #build(kgf: number): void {
    const { tokens, unit } = this.#style;
    const g = this.#arrow.clear();
    if (kgf === 0) return;
    const up = Math.sign(kgf);
    const length = lengthPx(kgf, unit);
    const [shaft, head, wide] = [4.5 * unit, Math.min(13 * unit, length * 0.8), 11 * unit];
    const at = (x: number, along: number) => [x, -up * along] as const;
    g.poly([
      ...at(-shaft, 0),
      ...at(-shaft, length - head),
      ...at(-wide, length - head),
      ...at(0, length),
      ...at(wide, length - head),
      ...at(shaft, length - head),
      ...at(shaft, 0),
    ])
      .fill(kgf > 0 ? tokens.forceUp : tokens.forceDown)
      .stroke({ width: 1.5 * unit, color: tokens.paper, join: 'round' });
    // A cut through the shaft says that the force is greater than the arrow is long.
    if (Math.abs(kgf) >= MOST_KGF)
      g.poly([
        ...at(-shaft * 1.6, 12 * unit),
        ...at(shaft * 1.6, 17 * unit),
        ...at(shaft * 1.6, 21 * unit),
        ...at(-shaft * 1.6, 16 * unit),
      ]).fill(tokens.paper);
  }
}

/** Length of the arrow of a force, pixels; a small one is as long as its head. */
function lengthPx(kgf: number, unit: number): number {
  return kgf === 0 ? 0 : Math.max(Math.abs(kgf) * PX_PER_KGF, 15) * unit;
}
