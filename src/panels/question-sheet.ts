import { html, nothing } from 'lit';
import { letterOf, type Answer, type Asking, type Frame, type Prompt } from '../lesson/index.ts';
import { middleOf, numberChoice } from './number-choice.ts';
import { Panel } from './panel.ts';
import { curveSketch, watchedLine } from './prompt-drawings.ts';
import { unbroken } from './unbroken.ts';
import { waterPin, type PinPlace } from './water-pin.ts';
import { wish } from './wish.ts';

/** A place in the water is also moved by so much at once, metres. */
const HALF_M = 0.5;

/** What the run is frozen for: something said, or a prediction that is locked before it goes on. Nothing here tells the answer. */
export class QuestionSheet extends Panel {
  static override properties = {
    prompt: { attribute: false },
    asking: { attribute: false },
    chosen: { state: true },
    drawn: { attribute: false },
    pin: { attribute: false },
  };
  declare prompt: Prompt | null;
  /** Which of a lesson's predictions it is; null in what is no lesson. */
  declare asking: Asking | null;
  declare chosen: Answer;
  /** What the water shows of the answer: so many seconds ahead, a mark on the depth scale, a slope, or nothing. */
  declare drawn: number | 'scale' | 'slope' | null;
  /** Where the pin of a depth stands on the page; null where there is none. */
  declare pin: PinPlace | null;
  /** What stood there when it was asked. */
  #offered: Answer = null;

  constructor() {
    super();
    this.prompt = null;
    this.asking = null;
    this.chosen = null;
    this.drawn = null;
    this.pin = null;
  }

  /** What was chosen so far; null as long as nothing was changed. */
  get said(): Answer {
    return JSON.stringify(this.chosen) === JSON.stringify(this.#offered) ? null : this.chosen;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const before = changed.get('prompt') as Prompt | null | undefined;
    if (!changed.has('prompt') || before?.id === this.prompt?.id) return;
    const prompt = this.prompt;
    this.chosen = this.#offered =
      prompt?.kind === 'order'
        ? prompt.items.map((item) => item.id)
        : prompt?.kind === 'number' || prompt?.kind === 'place'
          ? middleOf(prompt)
          : prompt?.kind === 'curve'
            ? prompt.along.map(() => middleOf(prompt))
            : null;
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    const before = changed.get('prompt') as Prompt | null | undefined;
    if (changed.has('prompt') && this.prompt && before?.id !== this.prompt.id) this.querySelector('h2')?.focus();
    // The water shows what is chosen.
    if (changed.has('prompt') || changed.has('chosen')) this.dispatchEvent(new Event('chosen', { bubbles: true }));
  }

  override render() {
    const prompt = this.prompt;
    if (!prompt) return html``;
    if (prompt.kind === 'explain')
      return html`<section aria-label="Before you go on">
        <h2 tabindex="-1">${prompt.title}</h2>
        <p>${unbroken(prompt.text)}</p>
        ${this.#goOn('go on', false)}
      </section>`;
    if (prompt.kind === 'watch')
      return html`<section aria-label="Watch first">
        <p class="kind">Watch first</p>
        <h2 tabindex="-1">${prompt.title}</h2>
        <p>${prompt.text}</p>
        ${watchedLine(prompt)}
        <ol class="frames">
          ${(prompt.frames ?? []).map(frameLine)}
        </ol>
        ${this.#goOn('go on', false)}
      </section>`;
    return html`<section aria-label="Predict">
      <p class="kind">${kindWords(this.asking)}</p>
      <h2 tabindex="-1">${unbroken(prompt.question)}</h2>
      ${this.#shape(prompt)}
      ${this.#goOn('lock it', this.chosen === null)}
    </section>`;
  }

  #shape(prompt: Asked) {
    if (prompt.kind === 'choice') return this.#choice(prompt);
    if (prompt.kind === 'order') return this.#order(prompt);
    if (prompt.kind === 'curve') return this.#curve(prompt);
    const value = Number(this.chosen ?? prompt.least);
    const choose = (chosen: number) => (this.chosen = chosen);
    const { pin, drawn } = this;
    const stands = drawn === 'scale' ? 'on the depth scale' : `in the water stands ${drawn} s from now`;
    const moved =
      pin &&
      html`<p class="drawn">The pin ${stands}: move it, or use the buttons.</p>
      ${waterPin(prompt, value, pin, choose)}`;
    const sloped =
      drawn === 'slope' && html`<p class="drawn">In the water: your number as a slope, a dot each second.</p>`;
    return html`${moved || sloped || nothing} ${numberChoice(prompt, value, 'Your number', choose, prompt.kind === 'place' && prompt.step < HALF_M ? HALF_M : undefined)}`;
  }

  #choice(prompt: Extract<Prompt, { kind: 'choice' }>) {
    const { drawn } = this;
    const words = drawn !== null && html`<p class="drawn">In the water: each answer, ${drawn} s ahead.</p>`;
    return html`${words || nothing}
    <div class="options ${drawn === null ? '' : 'lettered'}">
      ${prompt.options.map(
        (option, at) =>
          html`<button
            type="button"
            class="option"
            aria-pressed=${this.chosen === option.id}
            @click=${() => (this.chosen = option.id)}
          >
            ${drawn === null ? nothing : html`<b class="letter">${letterOf(at)}</b> `}${option.words}
          </button>`,
      )}
    </div>`;
  }

  #curve(prompt: Extract<Prompt, { kind: 'curve' }>) {
    const values = this.chosen as readonly number[];
    return html`${curveSketch(prompt, values)}
      <ul class="curve">
        ${prompt.along.map((along, at) => {
          const label = `at ${along} ${prompt.alongUnit}`;
          const choose = (value: number) => (this.chosen = values.map((one, i) => (i === at ? value : one)));
          return html`<li><span>${label}</span> ${numberChoice(prompt, values[at] ?? prompt.least, label, choose)}</li>`;
        })}
      </ul>`;
  }

  #order(prompt: Extract<Prompt, { kind: 'order' }>) {
    const order = Array.isArray(this.chosen) ? (this.chosen as readonly string[]) : prompt.items.map(({ id }) => id);
    const up = (at: number) => {
      const next = [...order];
      [next[at - 1], next[at]] = [next[at]!, next[at - 1]!];
      this.chosen = next;
    };
    return html`<p>Put them in order: what is asked for comes first.</p>
      <ol class="order">
        ${order.map((id, at) => {
          const words = prompt.items.find((item) => item.id === id)?.words ?? id;
          return html`<li>
            <span><b>${at + 1}:</b> ${words}</span>
            <button type="button" class="tool" ?disabled=${at === 0} aria-label="${words}: one up" @click=${() => up(at)}>
              up
            </button>
          </li>`;
        })}
      </ol>`;
  }

  #goOn(words: string, disabled: boolean) {
    return html`<button
      type="button"
      class="tool main"
      ?disabled=${disabled}
      @click=${() => wish(this, { kind: 'answer', answer: this.chosen })}
    >
      ${words}
    </button>`;
  }
}
customElements.define('question-sheet', QuestionSheet);

/** How many are asked, and when it is told what is right. */
function kindWords(asking: Asking | null): string {
  if (!asking) return 'Predict first; the answer comes after';
  return asking.of === 1
    ? 'Predict; the answer comes after the dive'
    : `Predict, ${asking.at} of ${asking.of}; answers after the dive`;
}

type Asked = Exclude<Prompt, { kind: 'explain' | 'watch' }>;

/** A freeze: what is to be seen, and what instruments read then. A class is told the gas alone, the line shows it the rest. */
function frameLine({ atS, depthM, speedMpmin, netKg, jacketL, words }: Frame) {
  const rate = Math.abs(speedMpmin).toFixed(0);
  const way = rate === '0' ? 'still' : `${speedMpmin > 0 ? 'sinking' : 'rising'} ${rate} m/min`;
  const pull = Math.abs(netKg) < 0.1 ? 'neutral' : `${Math.abs(netKg).toFixed(1)} kg ${netKg > 0 ? 'light' : 'heavy'}`;
  return html`<li>
    <b>${words}</b> ${unbroken(`${atS} s:`)} <span class="read">${unbroken(`${depthM.toFixed(1)} m, ${way}, ${pull},`)}</span>
    ${unbroken(`${jacketL.toFixed(1)} L in the jacket.`)}
  </li>`;
}
