// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import { KEY_ROWS } from '../../src/panels/key-rows.ts';
import { actOfKey, focusOf, meaningOf, type KeyLike } from '../../src/app/keys.ts';

const key = (code: string, more: Partial<KeyLike> = {}): KeyLike => ({
  code,
  key: '',
  repeat: false,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  ...more,
});

describe('meaningOf()', () => {
  test.each([
    ['KeyI', 'add'],
    ['KeyK', 'vent'],
    ['KeyW', 'in'],
    ['KeyS', 'out'],
    ['ArrowUp', 'kick-up'],
    ['ArrowDown', 'kick-down'],
  ])('%s is the act %s', (code, act) => {
    expect(meaningOf(key(code), 'elsewhere')).toEqual({ act });
  });

  test.each([
    ['KeyX', 'release'],
    ['KeyP', 'freeze'],
    ['Space', 'freeze'],
    ['KeyR', 'restart'],
    ['Backspace', 'release-all'],
    ['Minus', 'slower'],
    ['Equal', 'faster'],
  ])('%s is the command %s', (code, command) => {
    expect(meaningOf(key(code), 'elsewhere')).toEqual({ command });
  });

  test.each([
    ['Digit1', 'reach'],
    ['Digit2', 'forces'],
    ['Digit3', 'hilltop'],
    ['Digit4', 'stops'],
    ['Digit5', 'map'],
    ['Digit6', 'volumes'],
    ['Digit7', 'ledger'],
    ['Digit8', 'bands'],
    ['Digit9', 'ahead'],
    ['Digit0', 'whole'],
  ])('%s looks at %s', (code, look) => {
    expect(meaningOf(key(code), 'elsewhere')).toEqual({ look });
    expect(meaningOf(key(code), 'typing')).toBeNull();
  });

  test('ignores a repeated key, a browser shortcut and all typing', () => {
    expect(meaningOf(key('KeyI', { repeat: true }), 'elsewhere')).toBeNull();
    expect(meaningOf(key('KeyR', { ctrlKey: true }), 'elsewhere')).toBeNull();
    expect(meaningOf(key('KeyI'), 'typing')).toBeNull();
  });

  test('leaves Space to a button that has the focus, and no other key', () => {
    expect(meaningOf(key('Space'), 'button')).toBeNull();
    expect(meaningOf(key('KeyK'), 'button')).toEqual({ act: 'vent' });
  });
});

describe('focusOf()', () => {
  test.each([
    ['<input>', 'input', 'typing'],
    ['<select></select>', 'select', 'typing'],
    ['<input type="checkbox">', 'input', 'button'],
    ['<button><b>x</b></button>', 'b', 'button'],
    ['<p>x</p>', 'p', 'elsewhere'],
  ])('of %s is %3$s', (source, selector, focus) => {
    document.body.innerHTML = source;
    expect(focusOf(document.querySelector(selector))).toBe(focus);
  });
});

describe('a moved key', () => {
  const moved = { KeyI: 'KeyQ', KeyP: 'KeyI' };

  test('means at its new place what it meant at the usual one, and what came there means that instead', () => {
    expect(meaningOf(key('KeyQ'), 'elsewhere', moved)).toEqual({ act: 'add' });
    expect(meaningOf(key('KeyI'), 'elsewhere', moved)).toEqual({ command: 'freeze' });
    expect(actOfKey('KeyQ', moved)).toBe('add');
    expect(actOfKey('KeyI', moved)).toBeUndefined();
  });

  test('means nothing at a place that it left empty', () =>
    expect(meaningOf(key('KeyP'), 'elsewhere', moved)).toBeNull());
});

test('every key that means something has its line in the list of keys, where it can be moved', () => {
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `Key${letter}`);
  const digits = [...'0123456789'].map((digit) => `Digit${digit}`);
  const marks = [
    'Minus',
    'Equal',
    'BracketLeft',
    'BracketRight',
    'Semicolon',
    'Quote',
    'Backquote',
    'Backslash',
    'Comma',
    'Slash',
  ];
  const others = [
    'Space',
    'ArrowUp',
    'ArrowDown',
    'ArrowLeft',
    'ArrowRight',
    'Home',
    'End',
    'Insert',
    'Delete',
    'Backspace',
  ];
  const meant = [...letters, ...digits, ...marks, ...others].filter((code) => meaningOf(key(code), 'elsewhere'));
  expect(meant.length).toBeGreaterThan(20);
  expect(KEY_ROWS.map(({ usual }) => usual)).toEqual(expect.arrayContaining(meant));
});
