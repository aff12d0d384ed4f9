import { html, nothing, type TemplateResult } from 'lit';
import {
  MATERIALS,
  type BenchDial,
  type BenchSet,
  type BenchWaterName,
  type DeepView,
  type MaterialId,
  type PuttyShape,
  type TankView,
} from '../bench/index.ts';
import './bench-deep.ts';
import { CARRY_M, HOOK_M, SHAPES, SQUEEZE_PA, TOOL_KEYS, backM, columnBy, handAsk } from './bench-hands.ts';
import { benchDebrief, benchTask } from './bench-lesson.ts';
import './bench-tank.ts';
import type { BenchView, BenchWish } from './bench-view.ts';
import { depthWords, dialWords } from './bench-words.ts';
import { keyText, type MovedKeys } from './key-places.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

const SETS: readonly (readonly [set: BenchSet, words: string])[] = [
  ['putty', 'a lump of putty'],
  ['stones', 'five stones'],
  ['odd-stone', 'an odd stone'],
  ['can', 'a steel can'],
  ['block', 'a block'],
  ['stuffs', 'ten stuffs'],
];
const WATERS: readonly BenchWaterName[] = ['fresh', 'brackish', 'salt'];
const MODES = [
  ['tank', 'tank'],
  ['deep', 'deep tank'],
  ['bottle', 'bottle diver'],
] as const;
const taskOf = (bench: BenchView | null | undefined) =>
  bench?.prompt?.id ?? bench?.lesson?.trying?.title ?? (bench?.lesson?.came ? 'came' : '');

/** The bench: a picture of the water, and beside it everything that can be done, each with a button. */
export class BenchSheet extends Panel {
  static override properties = { bench: { attribute: false }, keys: { attribute: false } };
  declare bench: BenchView | null;
  declare keys: MovedKeys;

  constructor() {
    super();
    this.bench = null;
    this.keys = {};
  }

  /** A new task is read from its head. */
  override updated(changed: Map<PropertyKey, unknown>): void {
    const before = changed.get('bench') as BenchView | null | undefined;
    if (taskOf(before) === taskOf(this.bench)) return;
    this.querySelector('.deck')?.scrollTo({ top: 0 });
    // What was pressed is gone with the task before it. A question takes the focus by itself.
    this.querySelector<HTMLElement>('.task h2, .came h2')?.focus({ preventScroll: true });
  }

  override render() {
    const { bench } = this;
    if (!bench) return html``;
    const { tank, deep, prompt, lesson, sketched } = bench;
    return html`<div class="picture">
        <p class="sentence" role="status">${bench.sentence}</p>
        ${tank ? html`<bench-tank .tank=${tank}></bench-tank>` : html`<bench-deep .deep=${deep} .sketched=${sketched}></bench-deep>`}
      </div>
      ${
        prompt
          ? html`<div class="deck asked"><question-sheet .prompt=${prompt}></question-sheet></div>`
          : lesson?.came
            ? html`<div class="deck">${benchDebrief(this, lesson)}</div>`
            : this.#deck(bench)
      }`;
  }

  #deck({ tank, deep, lesson }: BenchView) {
    const mode = tank ? 'tank' : (deep?.kind ?? 'tank');
    return html`<section class="deck" aria-label="What to do">
      ${
        lesson
          ? benchTask(this, lesson)
          : html`<div class="row" role="group" aria-label="Which bench">
              ${MODES.map(([id, words]) => this.#button(words, { do: 'mode', mode: id }, mode === id))}
            </div>`
      }
      ${tank ? this.#tank(tank, lesson) : nothing} ${deep ? this.#deep(deep, lesson === null) : nothing}
    </section>`;
  }

  /** In a lesson the things are the lesson's: nothing is put in, and nothing about them is told. */
  #tank(tank: TankView, lesson: BenchView['lesson']) {
    const chosen = tank.things.find(({ id }) => id === tank.chosenId);
    const held = tank.hand !== null;
    const putty = chosen?.thing.spec.kind === 'putty' ? chosen.thing.spec.shape : null;
    const same = (shape: PuttyShape) => putty !== null && JSON.stringify(putty) === JSON.stringify(shape);
    return html`<div class="row first">
        <button type="button" class="main" @click=${() => this.#ask(handAsk({ tank, deep: null }))}>${held ? 'let go' : 'take in hand'}</button>
        ${this.#button('hold under', { do: 'under' })}
        <span class="arrows" role="group" aria-label="Carry">
          ${this.#button('←', { do: 'carry', byXM: -CARRY_M, byYM: 0 }, undefined, 'carry left')}
          ${this.#button('↑', { do: 'carry', byXM: 0, byYM: -CARRY_M }, undefined, 'carry up')}
          ${this.#button('↓', { do: 'carry', byXM: 0, byYM: CARRY_M }, undefined, 'carry down')}
          ${this.#button('→', { do: 'carry', byXM: CARRY_M, byYM: 0 }, undefined, 'carry right')}
        </span>
      </div>
      ${
        putty
          ? html`<h3>Shape, always the same mass</h3>
              <div class="row">${SHAPES.map(({ words, shape, key }) => this.#button(words, { do: 'shape', shape }, same(shape), undefined, key))}</div>`
          : nothing
      }
      ${tank.things.length > 1 ? html`<div class="row" role="group" aria-label="Which one">${tank.things.map(({ id, name }) => this.#button(name, { do: 'choose', id }, id === tank.chosenId))}</div>` : nothing}
      ${
        lesson
          ? nothing
          : html`${tank.material ? this.#materials(tank.material) : nothing} ${tank.dials.map((dial) => this.#dial(dial))}
              <h3>In the tank</h3>
              <div class="row">${SETS.map(([set, words]) => this.#button(words, { do: 'set', set }, set === tank.set))}</div>`
      }
      ${
        lesson && !lesson.water
          ? nothing
          : html`<h3>Water</h3>
              <div class="row">
                ${WATERS.map((water) => this.#button(water, { do: 'water', water }, water === tank.water))}
                <span class="note">${Math.round(tank.densityKgPerM3)} kg/m³</span>
              </div>`
      }
      <h3>Tools</h3>
      <div class="row">
        ${this.#button('forces', { do: 'forces' }, tank.forces)}
        ${this.#button('spring balance', { do: 'balance' }, tank.hookYM !== null, undefined, TOOL_KEYS.balance)}
        ${this.#button('spout and glass', { do: 'spout' }, tank.spoutYM !== null, undefined, TOOL_KEYS.spout)}
        ${tank.hookYM === null ? nothing : html`${this.#button('raise', { do: 'hook', byM: -HOOK_M })} ${this.#button('lower', { do: 'hook', byM: HOOK_M })}`}
        ${this.#button('begin anew', { do: 'anew' })}
      </div>`;
  }

  #deep(deep: DeepView, free: boolean) {
    const { kind, heldM, bottomM, squeezePa } = deep;
    const to = (depthM: number) => ({ do: 'depth', depthM }) as const;
    return html`<div class="row first">
        <button type="button" class="main" @click=${() => this.#ask(handAsk({ tank: null, deep }))}>
          ${heldM === null ? `take ${kind === 'deep' ? 'both ' : ''}back to ${depthWords(backM(kind), bottomM)}` : 'let go'}
        </button>
        <span class="arrows" role="group" aria-label="Carry">
          ${this.#button('↑', columnBy(deep, -1), undefined, 'carry up')} ${this.#button('↓', columnBy(deep, 1), undefined, 'carry down')}
        </span>
        ${kind === 'deep' ? [2, 5, 10, 20, 40].map((depthM) => this.#button(`to ${depthM} m`, to(depthM))) : [-5, 5].map((cm) => this.#button(`${Math.abs(cm)} cm ${cm < 0 ? 'up' : 'down'}`, columnBy(deep, cm)))}
      </div>
      ${
        kind === 'bottle'
          ? html`<h3>Squeeze the flask</h3>
              <div class="row">
                ${this.#button('−', { do: 'squeeze', pa: squeezePa - SQUEEZE_PA }, undefined, 'squeeze less')}
                <span class="note">${(squeezePa / 1000).toFixed(1)} kPa</span>
                ${this.#button('+', { do: 'squeeze', pa: squeezePa + SQUEEZE_PA }, undefined, 'squeeze more')}
                ${this.#button('let go of the flask', { do: 'squeeze', pa: 0 })}
              </div>`
          : !free
            ? nothing
            : html`<p class="note">A bag and a steel ball, each neutral at 5 m. Take both deeper, say what each will do, then let go.</p>`
      }
      <div class="row">
        ${kind === 'deep' && free ? this.#button('sketch the curve first', { do: 'sketch' }) : nothing}
        ${this.#button('begin anew', { do: 'anew' })}
      </div>`;
  }

  #dial(dial: BenchDial) {
    const { id, value, least, most, step } = dial;
    const { name, words } = dialWords(dial);
    const set = (to: number) => this.#ask({ do: 'dial', id, value: Math.min(Math.max(to, least), most) });
    return html`<div class="dial">
      <label for="dial-${id}">${name}</label>
      <button type="button" class="tool" aria-label="less ${name}" @click=${() => set(value - 4 * step)}>−</button>
      <input
        id="dial-${id}"
        type="range"
        min=${least}
        max=${most}
        step=${step}
        .value=${String(value)}
        aria-valuetext=${words}
        @input=${(event: Event) => set(Number((event.target as HTMLInputElement).value))}
      />
      <button type="button" class="tool" aria-label="more ${name}" @click=${() => set(value + 4 * step)}>+</button>
      <output for="dial-${id}">${words}</output>
    </div>`;
  }

  #materials(material: MaterialId): TemplateResult {
    return html`<div class="dial">
      <label for="bench-material">made of</label>
      <select
        id="bench-material"
        class="tool"
        @change=${(event: Event) => this.#ask({ do: 'material', material: (event.target as HTMLSelectElement).value as MaterialId })}
      >
        ${MATERIALS.map(
          ({ id, densityKgPerM3 }) =>
            html`<option value=${id} ?selected=${id === material}>${id}, ${densityKgPerM3} kg/m³</option>`,
        )}
      </select>
    </div>`;
  }

  #button(words: string, ask: BenchWish, pressed?: boolean, label?: string, key?: string) {
    return html`<button
      type="button"
      class="tool"
      aria-pressed=${pressed === undefined ? nothing : pressed}
      aria-label=${label ?? nothing}
      @click=${() => this.#ask(ask)}
    >
      ${words}${key ? html` <kbd aria-hidden="true">${keyText(key, this.keys)}</kbd>` : nothing}
    </button>`;
  }

  #ask(ask: BenchWish): void {
    wish(this, { kind: 'bench', ask });
  }
}
customElements.define('bench-sheet', BenchSheet);
