import { TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Stage } from '../stage/index.ts';

/** Room that the line keeps around it, pixels, and how finely it is looked at, seconds. */
const CLEAR_PX = 10;
const EACH_S = 0.5;

/** Where a card may lie left of the diver. */
export type Lies = 'low' | 'high';

/**
 * Where a card hides least of a line: at the foot of the water, or at its head.
 * @param points the line, pixels
 * @param boxes what the card would cover in each place
 * @param now where it lies, and stays unless the other place hides less
 */
export function liesFreest(
  points: readonly { readonly x: number; readonly y: number }[],
  boxes: Readonly<Record<Lies, Pick<DOMRect, 'left' | 'right' | 'top' | 'bottom'>>>,
  now: Lies,
): Lies {
  const hidden = (lies: Lies) => {
    const { left, right, top, bottom } = boxes[lies];
    return points.filter(
      ({ x, y }) => x > left - CLEAR_PX && x < right + CLEAR_PX && y > top - CLEAR_PX && y < bottom + CLEAR_PX,
    ).length;
  };
  const other = now === 'low' ? 'high' : 'low';
  return hidden(other) < hidden(now) ? other : now;
}

/** Lays the hill's card where the line is not, once the picture is drawn. @param coveredPx what covers the foot of the picture */
export function placeHill(
  root: HTMLElement,
  stage: Pick<Stage, 'depthToY' | 'secondsToX'>,
  recording: Recording,
  nowS: number,
  coveredPx: number,
): void {
  const card = root.querySelector<HTMLElement>('hilltop-card');
  const size = card?.querySelector('section')?.getBoundingClientRect();
  const water = root.querySelector('#stage')?.getBoundingClientRect();
  if (!card || !size || !water) return;
  const [left, right] = [size.left - water.left, size.right - water.left];
  const foot = water.height - coveredPx;
  const points: { x: number; y: number }[] = [];
  for (let s = recording.startTick / TICKS_PER_S; s <= nowS; s += EACH_S) {
    const row = Math.min(Math.round(((s * TICKS_PER_S - recording.startTick) / TICKS_PER_S) * 10), recording.rows - 1);
    points.push({ x: stage.secondsToX(s), y: stage.depthToY(recording.at(row, 'depthM')) });
  }
  const boxes = {
    low: { left, right, top: foot - size.height, bottom: foot },
    high: { left, right, top: 0, bottom: size.height },
  };
  card.dataset.lies = liesFreest(points, boxes, (card.dataset.lies as Lies | undefined) ?? 'low');
}
