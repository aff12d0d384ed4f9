// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { Shell } from '../../src/app/shell.ts';
import type { PresentingView } from '../../src/panels/index.ts';

const presenting = (shown: string | null): PresentingView => ({
  cards: null,
  strip: null,
  shown,
  words: '',
  hush: false,
  prompt: null,
  pad: { there: false, rows: [], waiting: '', words: '', moved: false },
  latency: '',
  fullScreen: false,
});

test('show() tells of another place or demonstration, and of nothing else: what arrives while a page goes to its address is no place', () => {
  const shell = new Shell(document.createElement('div'), window as unknown as Window);
  const told: string[] = [];
  shell.onPlace = () => told.push(`${shell.view.place} ${shell.view.presenting?.shown ?? ''}`);
  shell.show({ presenting: presenting(null) });
  shell.show({ frozen: true });
  expect(told).toEqual([]);
  shell.show({ place: 'learn' });
  shell.show({ presenting: presenting('hilltop') });
  shell.show({ presenting: presenting('hilltop') });
  shell.show({ presenting: null });
  expect(told).toEqual(['learn ', 'learn hilltop', 'learn ']);
});
