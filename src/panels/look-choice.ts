import { html, nothing, type TemplateResult } from 'lit';
import type { LookChoice } from './looks.ts';
import { wish } from './wish.ts';

/** What the forecasts take for granted, as a part of *more*. */
export function lookSettings(host: EventTarget, choice: LookChoice): TemplateResult {
  const set = (change: Partial<LookChoice>) => wish(host, { kind: 'look-choice', choice: change });
  const number = (words: string, value: number, least: number, most: number, step: number, key: keyof LookChoice) =>
    html`<label
      >${words}
      <input
        type="number"
        min=${least}
        max=${most}
        step=${step}
        .value=${String(value)}
        @change=${(event: Event) => {
          const field = event.target as HTMLInputElement;
          const given = Number(field.value);
          const kept = field.value !== '' && Number.isFinite(given) ? Math.min(Math.max(given, least), most) : value;
          field.value = String(kept);
          set({ [key]: kept });
        }}
    /></label>`;
  const { reactionS, leastL, mostL, below, above } = choice;
  return html`<section>
    <h3>What the looks take for granted</h3>
    ${number('seconds before anything is done', reactionS, 0, 10, 0.5, 'reactionS')}
    ${number('lungs breathed out, litres', leastL, 1, mostL - 0.5, 0.1, 'leastL')}
    ${number('lungs full, litres', mostL, leastL + 0.5, 9, 0.1, 'mostL')}
    <label
      >sinking, it is too late
      <select
        @change=${(event: Event) => set({ below: (event.target as HTMLSelectElement).value === 'depth' ? 18 : 'ground' })}
      >
        <option value="ground" ?selected=${below === 'ground'}>at the ground</option>
        <option value="depth" ?selected=${below !== 'ground'}>below a depth</option>
      </select></label
    >
    ${below === 'ground' ? nothing : number('that depth, metres', below, 1, 100, 0.5, 'below')}
    <label
      >rising, it is too late
      <select
        @change=${(event: Event) => set({ above: (event.target as HTMLSelectElement).value as LookChoice['above'] })}
      >
        <option value="head-out" ?selected=${above === 'head-out'}>with the head out of the water</option>
        <option value="rate" ?selected=${above === 'rate'}>faster than 18 m/min</option>
      </select></label
    >
  </section>`;
}
