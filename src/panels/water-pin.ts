import { html } from 'lit';
import type { PromptScale } from '../lesson/index.ts';
import { onScale, stepped } from './number-choice.ts';

/** Where a pin stands on the page, CSS pixels, and what a metre is there. */
export interface PinPlace {
  readonly x: number;
  readonly y: number;
  readonly pxPerM: number;
}

/** Steps that an arrow moves it by with shift. */
const SHIFT_STEPS = 10;

/** The part of the pin that a finger, a mouse or keys take hold of; what is seen of it is drawn in the water. */
export function waterPin(
  scale: PromptScale,
  value: number,
  { x, y, pxPerM }: PinPlace,
  choose: (value: number) => void,
) {
  const move = (toM: number) => choose(stepped(scale, toM));
  const keyed = (event: KeyboardEvent) => {
    // Page keys are a clicker's.
    const steps = scale.step * (event.shiftKey ? SHIFT_STEPS : 1);
    const to: Readonly<Record<string, number>> = {
      ArrowDown: value + steps,
      ArrowUp: value - steps,
      Home: scale.least,
      End: scale.most,
    };
    const toM = to[event.key];
    if (toM === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    move(toM);
  };
  const taken = (event: PointerEvent) => {
    const pin = event.currentTarget as HTMLElement;
    pin.setPointerCapture(event.pointerId);
    const fromY = event.clientY;
    // What it stood at when it was taken: the pin follows the hand, and does not jump under it.
    const follow = (moved: PointerEvent) => move(value + (moved.clientY - fromY) / pxPerM);
    const left = () => {
      pin.removeEventListener('pointermove', follow);
      for (const end of ['pointerup', 'pointercancel'] as const) pin.removeEventListener(end, left);
    };
    pin.addEventListener('pointermove', follow);
    for (const end of ['pointerup', 'pointercancel'] as const) pin.addEventListener(end, left);
  };
  return html`<div
    class="water-pin"
    role="slider"
    tabindex="0"
    aria-label="Depth that you predict"
    aria-orientation="vertical"
    aria-valuemin=${scale.least}
    aria-valuemax=${scale.most}
    aria-valuenow=${value}
    aria-valuetext=${onScale(scale, value)}
    .style=${`left: ${x}px; top: ${y}px`}
    @keydown=${keyed}
    @pointerdown=${taken}
  ></div>`;
}
