import { Container, Graphics, type Text } from 'pixi.js';
import { NEUTRAL_KGF } from './arrow.ts';
import { barsRoom, gathered, ledgerPxPerKgf, saidSumKgf, sumKgf } from './bars-scale.ts';
import { LOW_PX, barPx, type Style } from './layout.ts';
import type { PullBar, StageOverlay, StageView } from './view.ts';
import { labelOf, put, type LabelOptions } from './words.ts';

/** Share of a bar's height that is filled; the rest is the gap to the next. */
const THICK = 0.74;

/**
 * Bars on paper at the foot of the water. Volumes: each store of gas at one scale beside its surface size. Ledger: what holds up
 * and what pulls down at the scale of the arrow, the surplus marked. On a projector they bear no numbers: a class reads three.
 */
export class FootBars {
  readonly root = new Container();
  readonly #style: Style;
  readonly #bars = new Graphics();
  readonly #texts: Text[] = [];
  #used = 0;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    const { waterPx, footPx, edgePx, tokens } = style;
    const paper = new Graphics()
      .rect(0, 0, waterPx, footPx)
      .fill(tokens.paper)
      .moveTo(0, 0)
      .lineTo(waterPx, 0)
      .stroke({ width: edgePx, color: tokens.ink });
    this.root.addChild(paper, this.#bars);
  }

  draw({ overlay, coveredPx = 0 }: StageView): void {
    this.root.visible = overlay?.kind === 'volumes' || overlay?.kind === 'ledger';
    if (overlay?.kind !== 'volumes' && overlay?.kind !== 'ledger') return;
    this.root.y = this.#style.heightPx - coveredPx - this.#style.footPx;
    const key = keyOf(overlay);
    if (key === this.#key) return;
    this.#key = key;
    this.#used = 0;
    this.#bars.clear();
    if (overlay.kind === 'volumes') this.#volumes(overlay);
    else this.#ledger(overlay);
    for (const text of this.#texts.slice(this.#used)) text.visible = false;
  }

  /** At the scale of the kit: what the surface would make of a gas runs out of it without an end where the kit could not hold it. */
  #volumes({ stores, scaleM3 }: Extract<StageOverlay, { kind: 'volumes' }>): void {
    const { tokens, unit, projector, narrow } = this.#style;
    const { x, px } = barsRoom(this.#style);
    const pxPerM3 = px / scaleM3;
    stores.forEach(({ words, hereM3, surfaceM3 }, i) => {
      const [top, high] = this.#rowAt(i);
      const [here, above] = [Math.min(hereM3 * pxPerM3, px), Math.min(surfaceM3 * pxPerM3, px)];
      this.#bars
        .rect(x, top, here, high)
        .fill(tokens.gas)
        .stroke({ width: 1.6 * unit, color: tokens.ink });
      // Beyond what is there: dashes over the bar itself would make its edge look broken.
      if (above > here + 2 * unit)
        dashedBox(this.#bars, x + here, top, above - here, high, 5 * unit, surfaceM3 <= scaleM3);
      this.#bars.stroke({ width: 1.6 * unit, color: tokens.ink });
      this.#word(words, 8 * unit, top + high / 2, { bold: true });
      if (projector) return;
      const numbers = narrow ? litres(hereM3) : `${litres(hereM3)}, ${litres(surfaceM3)} at 0 m`;
      this.#word(numbers, x + Math.max(here, above) + 7 * unit, top + high / 2);
    });
    const fullL = (scaleM3 * 1e3).toFixed(0);
    this.#legend(
      narrow
        ? `dashed: at the surface; full: ${fullL} L`
        : `dashed: the same gas at the surface; a full bar is ${fullL} L`,
    );
  }

  #ledger({ up, down, afloat = false }: Extract<StageOverlay, { kind: 'ledger' }>): void {
    const { tokens, unit, textPx, projector, narrow } = this.#style;
    const { x } = barsRoom(this.#style);
    const pxPerKgf = ledgerPxPerKgf(this.#style, up, down);
    const said = ({ words, saidKgf }: PullBar) => (projector || narrow ? words : `${words} ${saidKgf.toFixed(1)}`);
    const longPx = (words: string) => words.length * textPx * 0.53;
    const fits = (part: PullBar) => part.kgf * pxPerKgf > longPx(said(part)) + 6 * unit;
    const edge = afloat ? 0 : x + Math.min(sumKgf(up), sumKgf(down)) * pxPerKgf;
    [up, down].forEach((parts, row) => {
      const [top, high] = this.#rowAt(row);
      this.#word(row === 0 ? 'up' : 'down', 8 * unit, top + high / 2, { bold: true });
      let at = x;
      for (const part of gathered(parts, fits)) {
        const width = part.kgf * pxPerKgf;
        const fill = part.isGas ? tokens.gas : part.words === 'lead' ? tokens.ink : tokens.body;
        this.#bars
          .rect(at, top, width, high)
          .fill(fill)
          .stroke({ width: 1.4 * unit, color: tokens.ink });
        // The outline of the surplus begins where the shorter bar ends: no word lies across it.
        const inset = 4 * unit;
        for (const words of fits(part) ? [said(part), part.words] : []) {
          const long = longPx(words);
          const left = at + inset < edge && edge < at + inset + long ? edge + inset + unit : at + inset;
          if (left + long > at + width) continue;
          this.#word(words, left, top + high / 2, { colour: this.#inkOn(part) });
          break;
        }
        at += width;
      }
    });
    if (!afloat) this.#surplus(sumKgf(up), sumKgf(down), saidSumKgf(up) - saidSumKgf(down), x, pxPerKgf);
    const legend = afloat ? 'balanced by what is out of the water' : 'kilograms of pull now, with this breath';
    this.#legend(narrow && !afloat ? 'kg of pull now' : legend);
  }

  /** By how much one bar is longer, in the colour of the arrow and beside the word of its way. */
  #surplus(upKgf: number, downKgf: number, saidKgf: number, x: number, pxPerKgf: number): void {
    const { tokens, unit, projector, narrow } = this.#style;
    const kgf = upKgf - downKgf;
    if (Math.abs(kgf) <= NEUTRAL_KGF) return;
    const [top, high] = this.#rowAt(kgf > 0 ? 0 : 1);
    const colour = kgf > 0 ? tokens.forceUp : tokens.forceDown;
    const [from, to] = [Math.min(upKgf, downKgf) * pxPerKgf + x, Math.max(upKgf, downKgf) * pxPerKgf + x];
    const gap = 3 * unit;
    this.#bars
      .rect(from, top - gap, to - from, high + 2 * gap)
      .stroke({ width: 3.4 * unit, color: colour, join: 'miter' });
    if (projector) return;
    const amount = `${Math.abs(saidKgf).toFixed(1)} kgf`;
    const words = narrow ? amount : `${amount} ${saidKgf > 0 ? 'up' : 'down'}`;
    this.#word(words, to + 7 * unit, top + high / 2, { bold: true, colour });
  }

  #inkOn({ isGas, words }: PullBar): number {
    const { tokens, theme } = this.#style;
    if (!isGas && words === 'lead') return tokens.paper;
    return isGas && theme === 'dark' ? tokens.paper : tokens.ink;
  }

  #rowAt(i: number): readonly [top: number, high: number] {
    const { textPx, heightPx } = this.#style;
    const row = barPx(textPx, heightPx);
    return [textPx * 0.5 + i * row, row * THICK];
  }

  #legend(words: string): void {
    const { textPx, bars, tokens, heightPx } = this.#style;
    if (heightPx < LOW_PX) return;
    const [top] = this.#rowAt(bars);
    this.#word(words, barsRoom(this.#style).x, top + textPx * 0.55, { colour: tokens.secondary, size: 0.9 });
  }

  /** A label of the pool; its ink and weight may change, its making is what costs. */
  #word(words: string, x: number, y: number, options: LabelOptions = {}): void {
    let text = this.#texts[this.#used];
    if (!text) {
      text = labelOf(this.#style);
      this.#texts.push(text);
      this.root.addChild(text);
    }
    this.#used++;
    text.visible = true;
    text.text = words;
    const { textPx, projector, tokens } = this.#style;
    const size = Math.round(textPx * Math.max(options.size ?? 1, projector ? 1 : 0));
    const weight = options.bold ? '600' : '400';
    const fill = options.colour ?? tokens.ink;
    if (text.style.fontSize !== size) text.style.fontSize = size;
    if (text.style.fontWeight !== weight) text.style.fontWeight = weight;
    if (text.style.fill !== fill) text.style.fill = fill;
    put(text, x, y);
  }
}

/** What is looked at, as fine as it shows. */
function keyOf(overlay: Extract<StageOverlay, { kind: 'volumes' | 'ledger' }>): string {
  if (overlay.kind === 'volumes')
    return overlay.stores.map((store) => `${store.words} ${litres(store.hereM3)} ${litres(store.surfaceM3)}`).join();
  const said = (parts: readonly PullBar[]) =>
    parts.map(({ words, kgf, saidKgf }) => `${words} ${kgf.toFixed(2)} ${saidKgf.toFixed(2)}`).join();
  return `${said(overlay.up)} / ${said(overlay.down)} ${overlay.afloat ?? false}`;
}

function litres(volumeM3: number): string {
  return `${(volumeM3 * 1e3).toFixed(1)} L`;
}

/** A box of dashes, open at its right where it has no end; the caller strokes it. */
function dashedBox(g: Graphics, x: number, y: number, width: number, high: number, dash: number, ends: boolean): void {
  for (let at = 0; at < width; at += dash * 2)
    for (const edge of [y, y + high]) g.moveTo(x + at, edge).lineTo(x + Math.min(at + dash, width), edge);
  for (let at = 0; ends && at < high; at += dash * 2)
    g.moveTo(x + width, y + at).lineTo(x + width, y + Math.min(at + dash, high));
}
