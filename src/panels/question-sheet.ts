import { html } from 'lit';
import type { Answer, Prompt } from '../lesson/index.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** What the run is frozen for: something said, or a prediction that is locked before it goes on. Nothing here tells the answer. */
export class QuestionSheet extends Panel {
  static override properties = { prompt: { attribute: false }, chosen: { state: true } };
  declare prompt: Prompt | null;
  declare chosen: Answer;

  constructor() {
    super();
    this.prompt = null;
    this.chosen = null;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const before = changed.get('prompt') as Prompt | null | undefined;
    if (!changed.has('prompt') || before?.id === this.prompt?.id) return;
    const prompt = this.prompt;
    this.chosen =
      prompt?.kind === 'order'
        ? prompt.items.map((item) => item.id)
        : prompt?.kind === 'number'
          ? prompt.least + Math.round((prompt.most - prompt.least) / 2 / prompt.step) * prompt.step
          : null;
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    const before = changed.get('prompt') as Prompt | null | undefined;
    if (changed.has('prompt') && this.prompt && before?.id !== this.prompt.id) this.querySelector('h2')?.focus();
  }

  override render() {
    const prompt = this.prompt;
    if (!prompt) return html``;
    if (prompt.kind === 'explain')
      return html`<section aria-label="Before you go on">
        <h2 tabindex="-1">${prompt.title}</h2>
        <p>${prompt.text}</p>
        ${this.#goOn('go on', false)}
      </section>`;
    return html`<section aria-label="Predict">
      <p class="kind">Predict, before you do it</p>
      <h2 tabindex="-1">${prompt.question}</h2>
      ${prompt.kind === 'choice' ? this.#choice(prompt) : prompt.kind === 'number' ? this.#number(prompt) : this.#order(prompt)}
      ${this.#goOn('lock it', this.chosen === null)}
    </section>`;
  }

  #choice(prompt: Extract<Prompt, { kind: 'choice' }>) {
    return html`<div class="options">
      ${prompt.options.map(
        (option) =>
          html`<button
            type="button"
            class="option"
            aria-pressed=${this.chosen === option.id}
            @click=${() => (this.chosen = option.id)}
          >
            ${option.words}
          </button>`,
      )}
    </div>`;
  }

  #number(prompt: Extract<Prompt, { kind: 'number' }>) {
    const value = Number(this.chosen ?? prompt.least);
    const digits = Number.isInteger(prompt.step) ? 0 : 1;
    const move = (by: number) =>
      (this.chosen = Math.min(Math.max(value + by * prompt.step, prompt.least), prompt.most));
    return html`<div class="number" role="group" aria-label="Your number">
      <button type="button" class="tool" aria-label="less" @click=${() => move(-1)}>−</button>
      <output aria-live="polite">${value.toFixed(digits)} ${prompt.unit}</output>
      <button type="button" class="tool" aria-label="more" @click=${() => move(1)}>+</button>
    </div>`;
  }

  #order(prompt: Extract<Prompt, { kind: 'order' }>) {
    const order = Array.isArray(this.chosen) ? (this.chosen as readonly string[]) : prompt.items.map(({ id }) => id);
    const up = (at: number) => {
      const next = [...order];
      [next[at - 1], next[at]] = [next[at]!, next[at - 1]!];
      this.chosen = next;
    };
    return html`<p>The greatest first.</p>
      <ol class="order">
        ${order.map((id, at) => {
          const words = prompt.items.find((item) => item.id === id)?.words ?? id;
          return html`<li>
            <span>${words}</span>
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
