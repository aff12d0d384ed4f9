// @vitest-environment happy-dom
import { afterEach, expect, test } from 'vitest';
import { LookMenu } from '../../src/panels/look-menu.ts';
import { USUAL_LOOKS, toggled, type LookChoice } from '../../src/panels/looks.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

async function opened(choice: LookChoice): Promise<{ menu: LookMenu; heard: Wish[] }> {
  const menu = Object.assign(new LookMenu(), { open: true, choice });
  const heard: Wish[] = [];
  menu.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(menu);
  await menu.updateComplete;
  return { menu, heard };
}

afterEach(() => document.body.replaceChildren());

test('the menu says what is on, and asks for what is pressed; Escape closes it', async () => {
  const { menu, heard } = await opened({ ...USUAL_LOOKS, reach: true, look: 'stops' });
  const buttons = [...menu.querySelectorAll<HTMLButtonElement>('.looks button')];
  expect(buttons.filter((one) => one.getAttribute('aria-pressed') === 'true').map((one) => one.textContent)).toEqual([
    expect.stringMatching(/breath reach\s+1/),
    expect.stringMatching(/what still stops you\s+4/),
    expect.stringMatching(/bands and limits\s+8/),
    expect.stringMatching(/ten seconds ahead\s+9/),
  ]);
  buttons[4]!.click();
  expect(heard).toEqual([{ kind: 'look', look: 'map' }]);
  menu.querySelector<HTMLButtonElement>('.across button:nth-of-type(2)')!.click();
  expect(heard[1]).toEqual({ kind: 'look-choice', choice: { across: 'lead', look: 'map' } });
  buttons[0]!.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
  expect(heard[2]).toEqual({ kind: 'look-menu', open: false });
});

test('toggled(): bands, limits and the line ahead are there until they are put away, whatever look is on', () => {
  const bare = toggled(toggled({ ...USUAL_LOOKS, look: 'ledger' }, 'bands'), 'ahead');
  expect(bare).toMatchObject({ bands: false, ahead: false, look: 'ledger' });
  expect(toggled(bare, 'bands')).toMatchObject({ bands: true, ahead: false });
});

test('toggled(): one look takes the place of another, the breath reach stays with any', () => {
  const both = toggled(toggled(USUAL_LOOKS, 'reach'), 'forces');
  expect(both).toMatchObject({ reach: true, look: 'forces' });
  expect(toggled(both, 'map')).toMatchObject({ reach: true, look: 'map' });
  expect(toggled(toggled(both, 'forces'), 'reach')).toMatchObject({ reach: false, look: null });
});
