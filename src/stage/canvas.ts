import 'pixi.js/unsafe-eval';
import { CanvasRenderer } from 'pixi.js';
import 'pixi.js/graphics';
import 'pixi.js/text';

/** A renderer that draws on a plain canvas, not yet started. */
export function canvasRenderer(): CanvasRenderer {
  return new CanvasRenderer();
}
