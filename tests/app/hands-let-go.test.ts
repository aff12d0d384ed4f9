// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { ownHands } from '../../src/app/pair-keys.ts';
import { listenToTime } from '../../src/app/time-hands.ts';
import type { Shell } from '../../src/app/shell.ts';
import type { Timed } from '../../src/app/timed.ts';
import { USUAL_SETTINGS } from '../../src/panels/settings.ts';

const view = { place: 'fly', prompt: null, moreOpen: false, frozen: true, settings: USUAL_SETTINGS };

function page() {
  const root = document.createElement('div');
  root.innerHTML = '<div id="stage"></div><button></button>';
  document.body.replaceChildren(root);
  const shell = { root, window, view: { ...view } };
  return {
    shell: shell as unknown as Shell,
    stage: root.querySelector('#stage')!,
    elsewhere: root.querySelector('button')!,
  };
}

const pointer = (on: Element, type: string, clientX: number, buttons: number) =>
  on.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, clientX, buttons, button: 0 }));

function pulls() {
  const { shell, stage, elsewhere } = page();
  const heard: unknown[] = [];
  let captured = false;
  Object.assign(stage, { hasPointerCapture: () => captured, setPointerCapture: () => (captured = true) });
  const dives = { begun: true, lookedBack: null, flight: { dive: { tick: 1200 } } };
  listenToTime({ shell, dives, stage: { pxPerM: 40 } } as unknown as Timed, (ask) => heard.push(ask));
  return { stage, elsewhere, heard };
}

test('a paper that is pulled follows the pointer; one that was only pressed, and let go elsewhere, follows no later press', () => {
  const { stage, elsewhere, heard } = pulls();
  pointer(stage, 'pointerdown', 100, 1);
  pointer(stage, 'pointermove', 104, 1);
  pointer(elsewhere, 'pointerup', 106, 0);
  pointer(elsewhere, 'pointerdown', 300, 1);
  pointer(stage, 'pointermove', 320, 1);
  expect(heard).toEqual([]);
  pointer(stage, 'pointerup', 320, 0);
  pointer(stage, 'pointerdown', 100, 1);
  pointer(stage, 'pointermove', 120, 1);
  expect(heard).toHaveLength(1);
});

test('a pointer that let go outside of the page and comes back with no button down pulls nothing after it', () => {
  const { stage, elsewhere, heard } = pulls();
  pointer(stage, 'pointerdown', 100, 1);
  pointer(elsewhere, 'pointermove', 102, 0);
  pointer(stage, 'pointermove', 140, 1);
  expect(heard).toEqual([]);
});

test('ownHands(): the number pad flies the second diver, and nobody while *more* is open', () => {
  const { shell } = page();
  const acts = ownHands(shell, () => true);
  const key = (type: string) => window.dispatchEvent(new KeyboardEvent(type, { code: 'Numpad8' }));
  Object.assign(shell.view, { moreOpen: true });
  key('keydown');
  expect([...acts()]).toEqual([]);
  key('keyup');
  Object.assign(shell.view, { moreOpen: false });
  key('keydown');
  expect([...acts()]).toEqual(['add']);
});
