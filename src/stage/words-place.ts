/** A rectangle on the page, CSS pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What words must keep off. */
export interface Obstacles {
  readonly boxes: readonly Box[];
  /** Heights of lines that run across the whole picture, or from `x` on to the right. */
  readonly lines: readonly { readonly y: number; readonly fromX: number }[];
  readonly within: Box;
}

/** A box reckoned from an edge of the picture may miss it by the last bits. */
const SLACK_PX = 1e-6;
/** Words keep so far off a line. */
const LINE_ROOM_PX = 2;

/** Whether two boxes share a point. */
export function crosses(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Whether a box lies within the picture and off every obstacle. */
export function isFree(box: Box, { boxes, lines, within }: Obstacles): boolean {
  return (
    box.left >= within.left - SLACK_PX &&
    box.right <= within.right + SLACK_PX &&
    box.top >= within.top - SLACK_PX &&
    box.bottom <= within.bottom + SLACK_PX &&
    !lines.some(({ y, fromX }) => box.top < y + LINE_ROOM_PX && box.bottom > y - LINE_ROOM_PX && box.right > fromX) &&
    !boxes.some((other) => crosses(box, other))
  );
}

/**
 * Places for words near a point, the best first: beside it, then below and above in growing distance, ending at the right edge
 * if they would leave the picture.
 */
export function placesNear(x: number, y: number, width: number, height: number, within: Box, gap: number): Box[] {
  const at = (left: number, top: number): Box => ({ left, top, right: left + width, bottom: top + height });
  const out = [at(x + gap * 1.4, y - height / 2), at(x - gap * 1.4 - width, y - height / 2)];
  for (let i = 0; i < 12; i++)
    for (const way of [1, -1]) {
      const middle = y + way * (gap + height / 2 + i * height * 0.5);
      for (const left of [
        x + gap * 0.6,
        x - width / 2,
        within.right - width,
        x - gap * 1.4 - width,
        x - gap * 6 - width,
      ])
        out.push(at(Math.min(left, within.right - width), middle - height / 2));
    }
  return out;
}

/** How far a point is from a box, pixels; 0 within it. */
export function awayFrom({ left, top, right, bottom }: Box, x: number, y: number): number {
  return Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom));
}

/** How far beside a point places are offered, half lines of words. */
const ASIDE = [0, 1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 31];

/**
 * Places about a point at 0, 0 for words of a size, at least `gap` from it, the nearest first; of those as near beside it before
 * below and above, and to the right before to the left. The furthest are a dozen lines of words away.
 */
export function placesAround(width: number, height: number, gap: number): Box[] {
  const out: { readonly box: Box; readonly cost: number }[] = [];
  const step = height / 2;
  const add = (left: number, down: number) => {
    const top = down * step - height / 2;
    const box = { left, top, right: left + width, bottom: top + height };
    const away = awayFrom(box, 0, 0);
    if (away < gap) return;
    const aside = left > 0 ? 0 : left + width < 0 ? 0.9 : 0.4;
    out.push({ box, cost: away + (aside - (down === 0 ? 0.6 : 0)) * height });
  };
  for (let down = -12; down <= 12; down++) {
    for (const aside of ASIDE) {
      add(gap * 1.4 + aside * step, down);
      add(-gap * 1.4 - aside * step - width, down);
    }
    for (const share of [0.1, 0.5, 0.9, 1]) add(-share * width, down);
  }
  return out.sort((a, b) => a.cost - b.cost).map(({ box }) => box);
}
