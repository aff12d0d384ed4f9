import { Text } from 'pixi.js';
import { FACE, type Style } from './layout.ts';

/** What a label may differ in; the rest is the style's. */
export interface LabelOptions {
  readonly colour?: number;
  readonly bold?: boolean;
  /** Against the style's text size. */
  readonly size?: number;
  /** Paper around the strokes, for words that lines may pass under. */
  readonly halo?: boolean;
  readonly anchorX?: number;
  readonly anchorY?: number;
}

/** A label: made once, its words changed in place, since a new text object is a new texture. */
export function labelOf(style: Style, options: LabelOptions = {}): Text {
  const text = new Text({
    text: '',
    resolution: style.pixelRatio,
    style: {
      fontFamily: [...FACE],
      // On a projector nothing is smaller than its least size.
      fontSize: Math.round(style.textPx * Math.max(options.size ?? 1, style.projector ? 1 : 0)),
      fontWeight: options.bold ? '600' : '400',
      fill: options.colour ?? style.tokens.ink,
      ...(options.halo === true
        ? { stroke: { color: style.tokens.paper, width: 3 * style.unit, alpha: 0.85, join: 'round' } }
        : {}),
    },
  });
  text.anchor.set(options.anchorX ?? 0, options.anchorY ?? 0.5);
  return text;
}

/** Puts a label on whole pixels, where its strokes stay sharp. */
export function put(text: Text, x: number, y: number): void {
  const ratio = text.resolution;
  text.position.set(Math.round(x * ratio) / ratio, Math.round(y * ratio) / ratio);
}
