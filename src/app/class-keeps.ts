import type { Presented } from './presented.ts';
import type { Tally } from './tally.ts';
import { keepHands, keepWatch, leftHands } from './watch-memory.ts';

/** Keeps where a class is in a lesson that it watches, and the hands that were counted: a reload goes on there. */
export function keepClass({ shell, dives }: Presented, tally: Tally): void {
  keepHands(shell.window, tally.left);
  const { lesson, flight } = dives;
  const { place, projector } = shell.view;
  if (!lesson || (place !== 'lesson' && place !== 'debrief')) return;
  const { by, given, under } = lesson;
  const { id } = lesson.lesson;
  keepWatch(shell.window, by && { id, by, asked: projector, given, under, ticks: flight.dive.tick });
}

/** The hands that were counted before a reload. */
export function bringHandsBack(view: Window, tally: Tally): void {
  const left = leftHands(view);
  if (left) tally.bringBack(left);
}
