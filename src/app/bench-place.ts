import { DeepDesk, TankDesk, type BenchAsk, type BenchMode } from '../bench/index.ts';
import { fetchBench, type BenchView } from '../panels/index.ts';
import './bench.css';
import type { Shell } from './shell.ts';

/** The *Bench*: a tank, a deep tank and a flask; the dive in hand stands still meanwhile. */
export class BenchPlace {
  readonly #shell: Shell;
  readonly #words: Awaited<ReturnType<typeof fetchBench>>;
  readonly #tank = new TankDesk();
  readonly #deep = new DeepDesk('deep');
  readonly #bottle = new DeepDesk('bottle');
  #mode: BenchMode = 'tank';
  #lastMs = NaN;

  private constructor(shell: Shell, words: Awaited<ReturnType<typeof fetchBench>>) {
    this.#shell = shell;
    this.#words = words;
    const next = (nowMs: number) => {
      this.#frame(nowMs);
      shell.window.requestAnimationFrame(next);
    };
    shell.window.requestAnimationFrame(next);
  }

  static async begin(shell: Shell): Promise<BenchPlace> {
    return new BenchPlace(shell, await fetchBench());
  }

  open(mode: BenchMode): void {
    this.#mode = mode;
    this.#shell.show({ place: 'bench', moreOpen: false, words: 'Bench', progress: '', hint: '', bench: this.#view() });
  }

  /** Does what is asked; what the bench does not allow is said, and nothing is changed. */
  hear(ask: BenchAsk): void {
    if (ask.do === 'mode') return this.open(ask.mode);
    this.#now().hear(ask);
    this.#shell.show({ bench: this.#view() });
  }

  #now(): TankDesk | DeepDesk {
    return this.#mode === 'tank' ? this.#tank : this.#mode === 'deep' ? this.#deep : this.#bottle;
  }

  #frame(nowMs: number): void {
    const passedS = this.#shell.window.document.hidden ? 0 : (nowMs - this.#lastMs) / 1000 || 0;
    this.#lastMs = nowMs;
    const { place, moreOpen } = this.#shell.view;
    if (place !== 'bench' || moreOpen) return;
    this.#now().pass(passedS);
    this.#shell.show({ bench: this.#view() });
  }

  #view(): BenchView {
    if (this.#mode === 'tank') {
      const tank = this.#tank.view();
      return { sentence: this.#words.tankSentence(tank), tank, deep: null };
    }
    const deep = (this.#mode === 'deep' ? this.#deep : this.#bottle).view();
    return { sentence: this.#words.deepSentence(deep), tank: null, deep };
  }
}
