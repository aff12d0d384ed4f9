/** Closer to its end than this a debrief is read, pixels. */
const NEARLY_PX = 8;
/** What is lower than this share of a page is never cut: a question with its answer. */
const WHOLE_SHARE = 0.6;
/** Turned back, pages overlap. */
const BACK_SHARE = 0.85;
/** Above what a page begins with, pixels. */
const MARGIN_PX = 6;

const sheetOf = (root: HTMLElement) => root.querySelector<HTMLElement>('debrief-sheet, bench-sheet .deck:has(.came)');

/** Room under its last line, so that the last page, too, can begin with something whole. */
const roomOf = (sheet: HTMLElement) => parseFloat(sheet.style.getPropertyValue('--read-room')) || 0;

/** Where its last line ends, pixels from the top of the whole. */
const endOf = (sheet: HTMLElement) =>
  sheet.scrollHeight - roomOf(sheet) - (parseFloat(getComputedStyle(sheet).paddingBottom) || 0);

/** Whether something of the debrief on a page lies below what is seen. */
export function readsOn(root: HTMLElement): boolean {
  const sheet = sheetOf(root);
  return sheet !== null && sheet.scrollTop + sheet.clientHeight < endOf(sheet) - NEARLY_PX;
}

/** Turns pages of the debrief, downward where positive. Each begins with what the page before did not show whole. */
export function readOn(root: HTMLElement, pages: number): void {
  const sheet = sheetOf(root);
  if (!sheet) return;
  const { scrollTop, clientHeight } = sheet;
  if (pages < 0) return sheet.scrollTo(0, scrollTop - BACK_SHARE * clientHeight);
  const offset = scrollTop - sheet.getBoundingClientRect().top;
  const parts = wholeParts(sheet, WHOLE_SHARE * clientHeight).map((part) => {
    const { top, bottom } = part.getBoundingClientRect();
    return { top: top + offset, bottom: bottom + offset, heads: /^H[2-6]$/.test(part.tagName) };
  });
  const to = pageAfter(parts, scrollTop, clientHeight);
  const room = Math.max(0, to + clientHeight - (sheet.scrollHeight - roomOf(sheet)));
  sheet.style.setProperty('--read-room', `${room}px`);
  sheet.scrollTo(0, to);
}

/** A part that is not to be cut, pixels from the top of the whole; a heading stays with what it heads. */
export interface ReadPart {
  readonly top: number;
  readonly bottom: number;
  readonly heads: boolean;
}

/** Where the next page begins, pixels from the top of the whole. */
export function pageAfter(parts: readonly ReadPart[], fromPx: number, pagePx: number): number {
  const cut = parts.findIndex(({ bottom }) => bottom > fromPx + pagePx + 1);
  const first = cut > 0 && parts[cut - 1]!.heads ? parts[cut - 1] : parts[cut];
  // Nothing is left but room.
  if (!first) return fromPx;
  const to = first.top - MARGIN_PX;
  // What is higher than a page is read page by page.
  return to > fromPx + MARGIN_PX ? to : fromPx + BACK_SHARE * pagePx;
}

function wholeParts(of: Element, mostPx: number): Element[] {
  return [...of.children].flatMap((child) => {
    const { height } = child.getBoundingClientRect();
    if (height === 0) return [];
    // A picture and what is said of it may stand on two pages.
    const inner = height > mostPx || child.tagName === 'FIGURE' ? wholeParts(child, mostPx) : [];
    return inner.length > 0 ? inner : [child];
  });
}
