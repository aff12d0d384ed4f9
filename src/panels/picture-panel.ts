import type { PropertyDeclarations } from 'lit';
import { Panel } from './panel.ts';

/** A picture that is drawn in the pixels of the page, for whatever room it has. */
export class PicturePanel extends Panel {
  static override properties: PropertyDeclarations = { widePx: { state: true }, highPx: { state: true } };
  declare widePx: number;
  declare highPx: number;
  #watch: ResizeObserver | null = null;

  constructor() {
    super();
    this.widePx = 0;
    this.highPx = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const measure = () => {
      this.widePx = this.clientWidth;
      this.highPx = this.clientHeight;
    };
    this.#watch = new ResizeObserver(measure);
    this.#watch.observe(this);
    measure();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
  }

  /** Sizes letters and arrows, by properties that the style sheet reads: the page allows no style in its markup. */
  protected size(emPx: number, boldPx: number): void {
    this.style.setProperty('--em', `${emPx}px`);
    this.style.setProperty('--bold', `${boldPx}px`);
  }
}
