// @vitest-environment happy-dom
import { afterEach, describe, expect, test } from 'vitest';
import { KeyList } from '../../src/panels/key-list.ts';
import { keyText, usualPlace } from '../../src/panels/key-places.ts';
import { KEY_ROWS, moved } from '../../src/panels/key-rows.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

describe('moved()', () => {
  test('puts a key where nothing is', () => {
    const { keys, words } = moved({}, 'KeyI', 'Home');
    expect(keys).toEqual({ KeyI: 'Home' });
    expect(words).toBe('“jacket add” is on Home now.');
  });

  test('says what was there and gives it the place that came free: no two on one key, none without', () => {
    const { keys, words } = moved({}, 'KeyI', 'KeyK');
    expect(words).toBe('“jacket add” is on K now; “jacket vent”, which was there, is on I.');
    expect(KEY_ROWS.map(({ usual }) => keys[usual] ?? usual).sort()).toEqual(KEY_ROWS.map(({ usual }) => usual).sort());
  });

  test('back on its usual key nothing is kept of it', () => {
    const there = moved({}, 'KeyI', 'KeyK').keys;
    expect(moved(there, 'KeyI', 'KeyI').keys).toEqual({});
  });

  test.each(['Escape', 'Tab', 'Enter', 'F5', 'ShiftLeft', ''])('leaves %s to the page', (code) =>
    expect(moved({}, 'KeyI', code).keys).toEqual({}),
  );

  test('whatever is moved in whatever order, every line has a key of its own', () => {
    let keys = {};
    for (let i = 0; i < 200; i++) {
      const row = KEY_ROWS[(i * 7) % KEY_ROWS.length]!;
      const code = KEY_ROWS[(i * 13 + 5) % KEY_ROWS.length]!.usual;
      ({ keys } = moved(keys, row.usual, code));
      expect(new Set(KEY_ROWS.map(({ usual }) => usualPlace(usual, keys))).size).toBe(KEY_ROWS.length);
    }
  });
});

test('keyText() writes the key as it stands on the keyboard', () => {
  expect(['KeyI', 'Digit5', 'ArrowUp', 'Space'].map((code) => keyText(code))).toEqual(['I', '5', '↑', 'Space']);
});

describe('key-list', () => {
  async function shown(): Promise<{ list: KeyList; heard: Wish[]; row: HTMLButtonElement }> {
    const list = new KeyList();
    const heard: Wish[] = [];
    list.addEventListener('wish', (event) => {
      if (event instanceof WishEvent) heard.push(event.wish);
    });
    document.body.append(list);
    await list.updateComplete;
    return { list, heard, row: list.querySelector<HTMLButtonElement>('li button')! };
  }
  const press = (code: string) => window.dispatchEvent(new KeyboardEvent('keydown', { code }));

  afterEach(() => document.body.replaceChildren());

  test('waits for a key, keeps it, and says so', async () => {
    const { list, heard, row } = await shown();
    row.click();
    await list.updateComplete;
    expect(row.textContent).toContain('press a key');
    press('Home');
    await list.updateComplete;
    expect(heard).toEqual([{ kind: 'settings', settings: { keys: { KeyI: 'Home' } } }]);
    expect(list.querySelector('[role=status]')!.textContent).toBe('“jacket add” is on Home now.');
    press('KeyH');
    expect(heard).toHaveLength(1);
  });

  test('Escape leaves it as it was, and a list that is gone takes no keys', async () => {
    const { list, heard, row } = await shown();
    row.click();
    press('Escape');
    press('Home');
    row.click();
    list.remove();
    press('Home');
    expect(heard).toEqual([]);
  });

  test('gives all keys back', async () => {
    const { list, heard } = await shown();
    list.keys = { KeyI: 'Home' };
    await list.updateComplete;
    [...list.querySelectorAll('button')].at(-1)!.click();
    expect(heard).toEqual([{ kind: 'settings', settings: { keys: {} } }]);
  });
});
