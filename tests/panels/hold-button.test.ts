// @vitest-environment happy-dom
import { afterEach, describe, expect, test, vi } from 'vitest';
import { HoldButton } from '../../src/panels/hold-button.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

async function made(
  change: Partial<HoldButton> = {},
): Promise<{ button: HTMLButtonElement; heard: Wish[]; host: HoldButton }> {
  const host = Object.assign(new HoldButton(), { act: 'vent' as const }, change);
  const heard: Wish[] = [];
  const page = document.createElement('main');
  page.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(page);
  // The deck about it goes with it.
  page.appendChild(document.createElement('section')).append(host);
  await host.updateComplete;
  return { host, heard, button: host.querySelector('button')! };
}

const pointer = (type: string, pointerId: number) => new PointerEvent(type, { pointerId, button: 0, bubbles: true });
const keyed = (type: string, key: string, repeat = false) => new KeyboardEvent(type, { key, repeat, bubbles: true });
const down = { kind: 'act', act: 'vent', down: true };
const up = { kind: 'act', act: 'vent', down: false };

afterEach(() => document.body.replaceChildren());

describe('hold-button', () => {
  test('acts from pointer down to pointer up, and heeds one finger alone', async () => {
    const { button, heard } = await made();
    button.dispatchEvent(pointer('pointerdown', 1));
    button.dispatchEvent(pointer('pointerdown', 2));
    button.dispatchEvent(pointer('pointerup', 2));
    expect(heard).toEqual([down]);
    button.dispatchEvent(pointer('pointerup', 1));
    expect(heard).toEqual([down, up]);
  });

  test.each(['pointercancel', 'lostpointercapture'])('lets go on %s', async (type) => {
    const { button, heard } = await made();
    button.dispatchEvent(pointer('pointerdown', 1));
    button.dispatchEvent(pointer(type, 1));
    expect(heard).toEqual([down, up]);
  });

  test('lets go when it leaves the page while it is down', async () => {
    const { button, heard, host } = await made();
    button.dispatchEvent(pointer('pointerdown', 1));
    host.parentElement!.remove();
    expect(heard).toEqual([down, up]);
  });

  test('acts from Enter down to Enter up, and ignores repeats', async () => {
    const { button, heard } = await made();
    button.dispatchEvent(keyed('keydown', 'Enter'));
    button.dispatchEvent(keyed('keydown', 'Enter', true));
    button.dispatchEvent(keyed('keyup', 'Enter'));
    expect(heard).toEqual([down, up]);
  });

  test('as a toggle one press begins and the next ends', async () => {
    const { button, heard, host } = await made({ toggles: true });
    button.dispatchEvent(pointer('pointerdown', 1));
    button.dispatchEvent(pointer('pointerup', 1));
    expect(heard).toEqual([down]);
    host.down = true;
    await host.updateComplete;
    expect(button.getAttribute('aria-pressed')).toBe('true');
    button.dispatchEvent(pointer('pointerdown', 1));
    button.dispatchEvent(pointer('pointerup', 1));
    expect(heard).toEqual([down, up]);
  });

  test('a click without a finger begins, and ends by itself', async () => {
    vi.useFakeTimers();
    const { button, heard } = await made();
    button.dispatchEvent(new MouseEvent('click', { detail: 0, bubbles: true }));
    expect(heard).toEqual([down]);
    vi.advanceTimersByTime(400);
    expect(heard).toEqual([down, up]);
    vi.useRealTimers();
  });

  test('shows its word and its key, and fills only while it is down', async () => {
    const { button, host } = await made();
    expect(button.textContent).toMatch(/vent\s+K/);
    expect(button.classList.contains('is-down')).toBe(false);
    host.down = true;
    await host.updateComplete;
    expect(button.classList.contains('is-down')).toBe(true);
  });
});
