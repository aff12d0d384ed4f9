// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import type { HoldButton } from '../../src/panels/hold-button.ts';
import { PracticeDeck, type DeckView } from '../../src/panels/practice-deck.ts';

const view: DeckView = {
  first: false,
  ledger: true,
  drysuit: false,
  loop: false,
  line: false,
  lineHeld: false,
  down: new Set(),
  posture: null,
  leadLeft: 4,
  byHand: true,
  headOut: true,
  wanted: [],
  armed: false,
  jacketEmpty: false,
  ventsAll: false,
  breathing: 'automatic',
  toggles: false,
  keys: {},
  readings: null,
};

async function notes(deck: DeckView): Promise<string[]> {
  const shown = document.body.appendChild(new PracticeDeck());
  shown.deck = deck;
  await shown.updateComplete;
  const buttons = [...shown.querySelectorAll<HoldButton>('hold-button')];
  await Promise.all(buttons.map((button) => button.updateComplete));
  const said = buttons.flatMap((button) => {
    const note = button.querySelector('.note:not(.holds)')?.textContent;
    return note ? `${button.act}: ${note}` : [];
  });
  shown.remove();
  return said;
}

test('a button says why a press would do nothing: nothing to vent, or the head under water where lead is changed by hand', async () => {
  expect(await notes(view)).toEqual([]);
  expect(await notes({ ...view, headOut: false })).toEqual(['lead-off: head out first', 'lead-on: head out first']);
  expect(await notes({ ...view, jacketEmpty: true })).toEqual(['vent: jacket is empty']);
});
