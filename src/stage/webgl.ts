import 'pixi.js/unsafe-eval';
import { WebGLRenderer } from 'pixi.js';
import 'pixi.js/graphics';
import 'pixi.js/text';

/** A renderer that draws with the graphics card, not yet started. */
export function webglRenderer(): WebGLRenderer {
  return new WebGLRenderer();
}
