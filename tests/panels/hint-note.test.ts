// @vitest-environment happy-dom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { HintNote } from '../../src/panels/hint-note.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

async function shown(words: string): Promise<HintNote> {
  const note = new HintNote();
  note.words = words;
  document.body.append(note);
  await note.updateComplete;
  return note;
}
const folded = (note: HintNote) => note.querySelector('button')!.getAttribute('aria-expanded') === 'false';
const press = (on: Element) => on.dispatchEvent(new Event('pointerdown', { bubbles: true }));

test('a hint lies open until it could be read, comes back by its button, and a new one lies open again', async () => {
  const note = await shown('Breathe out and wait.');
  expect(note.querySelector('span')!.textContent).toBe('Breathe out and wait.');
  vi.advanceTimersByTime(8900);
  await note.updateComplete;
  expect(folded(note)).toBe(false);
  vi.advanceTimersByTime(200);
  await note.updateComplete;
  expect(folded(note)).toBe(true);
  note.querySelector('button')!.click();
  await note.updateComplete;
  expect(folded(note)).toBe(false);
  vi.advanceTimersByTime(60_000);
  await note.updateComplete;
  expect(folded(note)).toBe(false);
  press(document.body);
  await note.updateComplete;
  expect(folded(note)).toBe(true);
  note.words = 'One press, and look.';
  await note.updateComplete;
  expect(folded(note)).toBe(false);
});

test('whoever begins to act has the water to himself; a press on the hint itself folds nothing', async () => {
  const note = await shown('Breathe out and wait.');
  press(note.querySelector('span')!);
  await note.updateComplete;
  expect(folded(note)).toBe(false);
  press(document.body);
  await note.updateComplete;
  expect(folded(note)).toBe(true);
});
