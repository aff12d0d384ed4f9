import { Camera } from './camera.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import { barsOf } from './bars-scale.ts';
import { styleOf } from './layout.ts';
import { rendererOf, suitedKind, type RendererKind, type StageRenderer } from './renderer.ts';
import { Scene, type SceneParts } from './scene.ts';
import type { StageView } from './view.ts';

/** How a stage begins. */
export interface StageOptions {
  /** Left out: what suits the machine, and canvas later if WebGL turns out slow. */
  readonly renderer?: RendererKind;
}

/** Time that the last frame took in script, milliseconds: to compose the picture, and to hand it to the renderer. */
export interface FrameCost {
  readonly composedMs: number;
  readonly renderedMs: number;
}

/** Frames looked at before WebGL is judged too slow, and the longest that half of them may take, milliseconds. */
const JUDGED_FRAMES = 20;
const SLOW_MS = 1000 / 30;

/**
 * The water, the line and the diver, and the depth scale at their right, drawn into an element that the page sizes. Call
 * {@link resize} once it has a size and after each change of it, then {@link draw} for each frame.
 */
export class Stage {
  readonly #host: HTMLElement;
  readonly #mayFall: boolean;
  readonly #camera = new Camera();
  #renderer: StageRenderer;
  #scene: Scene | undefined;
  #frame: Frame | undefined;
  #view: StageView | undefined;
  #sizePx: readonly [width: number, height: number, pixelRatio: number];
  #intervalsMs: number[] = [];
  #drawnAtMs = NaN;
  #cost: FrameCost = { composedMs: NaN, renderedMs: NaN };
  #gone = false;
  #parts: SceneParts = {};
  readonly #asked = new Set<keyof SceneParts>();
  #coming: Promise<unknown> = Promise.resolve();

  private constructor(host: HTMLElement, renderer: StageRenderer, mayFall: boolean) {
    this.#host = host;
    this.#renderer = renderer;
    this.#mayFall = mayFall;
    this.#sizePx = [renderer.screen.width, renderer.screen.height, renderer.resolution];
    this.#attach();
  }

  /** A stage in an element. Waits for the typeface, so that no word is first drawn in another one. */
  static async create(host: HTMLElement, options: StageOptions = {}): Promise<Stage> {
    const doc = host.ownerDocument;
    const kind = options.renderer ?? suitedKind(doc);
    const ratio = doc.defaultView?.devicePixelRatio ?? 1;
    const [renderer] = await Promise.all([
      rendererOf(kind, Math.max(host.clientWidth, 1), Math.max(host.clientHeight, 1), ratio),
      ...["400 14px 'Figtree Variable'", "600 14px 'Figtree Variable'"].map((font) =>
        doc.fonts.load(font).catch(() => []),
      ),
    ]);
    return new Stage(host, renderer, options.renderer === undefined);
  }

  /** Which renderer draws now. */
  get renderer(): RendererKind {
    return this.#renderer.name === 'canvas' ? 'canvas' : 'webgl';
  }

  /** Scale of the last frame, pixels a metre; NaN before the first. */
  get pxPerM(): number {
    return this.#frame?.pxPerM ?? NaN;
  }

  /** Where the depth scale stands in the last frame, pixels from the element's left; NaN before the first. */
  get scaleX(): number {
    return this.#frame?.waterPx ?? NaN;
  }

  /** Done once all that the views wanted so far has been fetched and drawn. */
  get whole(): Promise<unknown> {
    return this.#coming;
  }

  get cost(): FrameCost {
    return this.#cost;
  }

  /** Height of a depth in the last frame, pixels below the element's top; NaN before the first. */
  depthToY(depthM: number): number {
    return this.#frame ? depthToY(this.#frame, depthM) : NaN;
  }

  /** Place of a moment in the last frame, pixels from the element's left; NaN before the first. */
  secondsToX(s: number): number {
    return this.#frame ? secondsToX(this.#frame, s) : NaN;
  }

  /** Takes the size of the element, CSS pixels, and the screen's pixel ratio; draws the last view again. */
  resize(cssWidth: number, cssHeight: number, pixelRatio: number): void {
    if (!(cssWidth > 0 && cssHeight > 0 && pixelRatio > 0)) return;
    this.#sizePx = [cssWidth, cssHeight, pixelRatio];
    this.#renderer.resize(cssWidth, cssHeight, pixelRatio);
    if (this.#view) this.draw(this.#view);
  }

  /** One frame. */
  draw(view: StageView): void {
    if (this.#gone) return;
    this.#view = view;
    const { overlay, breathReachM, neutral, branches, bookmarks, second, asked, said } = view;
    const over = overlay || breathReachM || neutral?.length || branches?.length || bookmarks?.length || second;
    if (over) this.#want('Overlays', () => import('./overlays.ts'));
    if (view.changes.length > 1 || view.events.length > 0) this.#want('Happenings', () => import('./happenings.ts'));
    if (view.state.releasedMask !== 0) this.#want('LooseLead', () => import('./loose-lead.ts'));
    if (asked || said?.length) this.#want('Predictions', () => import('./predictions.ts'));
    const scene = this.#sceneFor(view);
    const beganMs = performance.now();
    this.#frame = this.#camera.frame(view, scene.style);
    scene.draw(view, this.#frame);
    const composedMs = performance.now();
    this.#renderer.render(scene.root);
    const renderedMs = performance.now();
    this.#cost = { composedMs: composedMs - beganMs, renderedMs: renderedMs - composedMs };
    this.#judge(renderedMs);
  }

  destroy(): void {
    this.#gone = true;
    this.#dropScene();
    this.#renderer.canvas.remove();
    this.#renderer.destroy();
  }

  #sceneFor(view: StageView): Scene {
    const [width, height, ratio] = this.#sizePx;
    const is = this.#scene?.style;
    const mapped = view.overlay?.kind === 'map';
    const bars = barsOf(view.overlay);
    const fits =
      is?.widthPx === width &&
      is.heightPx === height &&
      is.pixelRatio === ratio &&
      is.theme === view.theme &&
      is.projector === view.projector &&
      is.mapped === mapped &&
      is.bars === bars;
    if (this.#scene && fits) return this.#scene;
    this.#dropScene();
    const style = styleOf(width, height, ratio, view.theme, view.projector, mapped, bars);
    this.#renderer.background.color = style.tokens.paper;
    return (this.#scene = new Scene(style, this.#parts));
  }

  #dropScene(): void {
    this.#scene?.destroy();
    this.#scene = undefined;
  }

  /** A part comes when a view first has some of it, and is drawn from then on; without it the rest goes on. */
  #want(name: keyof SceneParts, load: () => Promise<SceneParts>): void {
    if (this.#asked.has(name)) return;
    this.#asked.add(name);
    const drawn = load().then(
      (loaded) => {
        this.#parts = { ...this.#parts, [name]: loaded[name] };
        this.#dropScene();
        if (this.#view) this.draw(this.#view);
      },
      () => undefined,
    );
    this.#coming = Promise.all([this.#coming, drawn]);
  }

  #attach(): void {
    const { canvas } = this.#renderer;
    canvas.setAttribute('aria-hidden', 'true');
    canvas.style.setProperty('display', 'block');
    canvas.addEventListener('webglcontextlost', () => void this.#fall());
    this.#host.append(canvas);
  }

  /** Judges the first second: frames that follow each other closely, half of them slower than 30 a second, end WebGL. */
  #judge(nowMs: number): void {
    const passedMs = nowMs - this.#drawnAtMs;
    this.#drawnAtMs = nowMs;
    if (!this.#mayFall || this.renderer === 'canvas' || this.#intervalsMs.length >= JUDGED_FRAMES) return;
    if (!(passedMs < 250)) return;
    this.#intervalsMs.push(passedMs);
    if (this.#intervalsMs.length < JUDGED_FRAMES) return;
    const middle = [...this.#intervalsMs].sort((a, b) => a - b)[JUDGED_FRAMES / 2]!;
    if (middle > SLOW_MS) void this.#fall();
  }

  /** Goes on with the canvas renderer where WebGL was lost or is slow. */
  async #fall(): Promise<void> {
    const old = this.#renderer;
    if (this.#gone || this.renderer === 'canvas') return;
    const renderer = await rendererOf('canvas', ...this.#sizePx);
    if (this.#gone || this.#renderer !== old) return renderer.destroy();
    this.#dropScene();
    old.canvas.remove();
    this.#renderer = renderer;
    renderer.resize(...this.#sizePx);
    this.#attach();
    old.destroy();
    if (this.#view) this.draw(this.#view);
  }
}
