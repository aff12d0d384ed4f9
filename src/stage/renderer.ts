import type { CanvasRenderer, WebGLRenderer } from 'pixi.js';

/** What draws: the graphics card, or the processor on a plain canvas. */
export type RendererKind = 'webgl' | 'canvas';
export type StageRenderer = WebGLRenderer | CanvasRenderer;

/** Names under which software drawing calls itself. */
const SOFTWARE = /swiftshader|llvmpipe|software|basic render/i;

/** The kind that suits this machine: canvas where WebGL is absent or drawn by software, which is slower than canvas. */
export function suitedKind(doc: Document): RendererKind {
  const gl = doc.createElement('canvas').getContext('webgl2');
  if (!gl) return 'canvas';
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const name = String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER));
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return SOFTWARE.test(name) ? 'canvas' : 'webgl';
}

/** A renderer with a canvas of its own, of which only the kind needed is loaded; the canvas when WebGL cannot be had after all. */
export async function rendererOf(
  kind: RendererKind,
  widthPx: number,
  heightPx: number,
  pixelRatio: number,
): Promise<StageRenderer> {
  const options = {
    width: widthPx,
    height: heightPx,
    resolution: pixelRatio,
    autoDensity: true,
    antialias: true,
    skipExtensionImports: true,
  };
  if (kind === 'webgl') {
    try {
      const { webglRenderer } = await import('./webgl.ts');
      const renderer = webglRenderer();
      await renderer.init(options);
      return renderer;
    } catch {
      return rendererOf('canvas', widthPx, heightPx, pixelRatio);
    }
  }
  const { canvasRenderer } = await import('./canvas.ts');
  const renderer = canvasRenderer();
  await renderer.init({ ...options, canvas: processorCanvas() });
  return renderer;
}

/**
 * A canvas whose pixels stay with the processor. Where no graphics card draws, the browser else has software play one: at 1280 × 720
 * that gives a third to a half of the frames. The context that is asked for first is the one that the renderer gets.
 */
function processorCanvas(): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  return canvas;
}
