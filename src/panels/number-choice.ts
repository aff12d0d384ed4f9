import { html, nothing } from 'lit';
import type { PromptScale } from '../lesson/index.ts';

/** More steps than this, and a button for ten of them stands beside the one for one. */
const MANY_STEPS = 30;

/** The step of a scale nearest to its middle. */
export function middleOf({ least, most, step }: PromptScale): number {
  return least + Math.round((most - least) / 2 / step) * step;
}

/** A value as it stands on its scale: 0.55 L. */
export function onScale({ step, unit }: PromptScale, value: number): string {
  return `${value.toFixed(digitsOf(step)).replace('-', '−')} ${unit}`;
}

/**
 * A number that is chosen by buttons alone, each saying by how much: no dragging, and no long way on a long scale.
 * @param stride what the outer buttons move by; left out: ten steps
 */
export function numberChoice(
  scale: PromptScale,
  value: number,
  label: string,
  choose: (value: number) => void,
  stride = 10 * scale.step,
) {
  const { least, most, step, unit } = scale;
  const move = (by: number) => choose(stepped(scale, value + by * step));
  const button = (by: number) => {
    const amount = Math.abs(by * step);
    const words = amount.toFixed(Number.isInteger(amount) ? 0 : digitsOf(step));
    const end = by < 0 ? value <= least : value >= most;
    return html`<button
      type="button"
      class="tool"
      ?disabled=${end}
      aria-label="${by < 0 ? 'less' : 'more'} by ${words} ${unit}"
      @click=${() => move(by)}
    >
      ${by < 0 ? '−' : '+'}${words}
    </button>`;
  };
  const far = Math.max(Math.round(stride / step), 1);
  const long = (most - least) / step > MANY_STEPS && far > 1;
  return html`<div class="number ${unit.length > 3 ? 'long' : ''}" role="group" aria-label=${label}>
    ${long ? button(-far) : nothing}${button(-1)}
    <output aria-live="polite">${onScale(scale, value)}</output>
    ${button(1)}${long ? button(far) : nothing}
  </div>`;
}

/** The step of a scale nearest to a value. */
export function stepped({ least, most, step }: PromptScale, value: number): number {
  return Math.min(Math.max(least + Math.round((value - least) / step) * step, least), most);
}

function digitsOf(step: number): number {
  return Number.isInteger(step) ? 0 : step < 0.1 ? 2 : 1;
}
