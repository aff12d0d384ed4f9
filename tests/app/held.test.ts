import { expect, test } from 'vitest';
import { Held } from '../../src/app/held.ts';

test('Held ignores the opposite of what is down, until it is let go', () => {
  const held = new Held();
  expect(held.press('add')).toBe(true);
  expect(held.press('vent')).toBe(false);
  expect([...held.acts]).toEqual(['add']);
  held.release('add');
  expect(held.press('vent')).toBe(true);
});

test('Held takes acts that are no opposites together, and lets all of them go at once', () => {
  const held = new Held();
  held.press('add');
  held.press('out');
  expect(held.press('add')).toBe(false);
  expect(held.acts.size).toBe(2);
  held.releaseAll();
  expect(held.acts.size).toBe(0);
});

test('Held lets the opposite go where the later press is the one that is meant', () => {
  const held = new Held();
  held.press('blow');
  held.press('in');
  held.yield('vent');
  expect(held.press('vent')).toBe(true);
  expect([...held.acts]).toEqual(['in', 'vent']);
});
