// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { drawWholeRun } from '../../src/app/whole-run.ts';
import { WishEvent, type Wish } from '../../src/panels/index.ts';
import { ringsOn } from '../../src/stage/index.ts';
import { sheetOf } from '../../src/stage/run-sheet-layout.ts';
import { diveAt, viewOf } from '../stage/views.ts';

test('drawWholeRun() goes to the moment of the ring that is pressed, within a thumb of it, and nowhere else', () => {
  const dive = diveAt(8, 2e-3);
  dive.advance(120 * 100);
  const rings = [20, 60, 61].map((atS, i) => ({ atS, number: i + 1 }));
  const view = viewOf({ recording: dive.recording, rings });
  document.body.innerHTML = '<debrief-sheet><figure style="font-size: 16px"><canvas></canvas></figure></debrief-sheet>';
  const canvas = document.querySelector('canvas')!;
  canvas.style.fontSize = '16px';
  Object.defineProperty(canvas.parentElement, 'clientWidth', { value: 470 });
  const heard: Wish[] = [];
  document.body.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  drawWholeRun(document, view, 1);
  const press = (x: number, y: number) =>
    canvas.dispatchEvent(Object.assign(new Event('click'), { offsetX: x, offsetY: y }));
  const placed = ringsOn(view, sheetOf(view, { widthPx: 470, rowPx: 150, pixelRatio: 1, textPx: 16 }));
  for (const { x, y } of placed) press(x + 3, y - 3);
  press(placed[0]!.x + 5, placed[0]!.y + 90);
  expect(heard).toEqual([20, 60, 61].map((atS) => ({ kind: 'moment', atS })));
});
