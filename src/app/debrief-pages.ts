/** Pages of a debrief overlap, so that no line is lost; closer to its end than this it is read, pixels. */
const PAGE_SHARE = 0.85;
const NEARLY_PX = 8;

const sheetOf = (root: HTMLElement) => root.querySelector('debrief-sheet, bench-sheet .deck:has(.came)');

/** Whether something of the debrief on a page lies below what is seen. */
export function readsOn(root: HTMLElement): boolean {
  const sheet = sheetOf(root);
  return sheet !== null && sheet.scrollTop + sheet.clientHeight < sheet.scrollHeight - NEARLY_PX;
}

/** Turns pages of the debrief, downward where positive. */
export function readOn(root: HTMLElement, pages: number): void {
  const sheet = sheetOf(root);
  sheet?.scrollBy(0, pages * PAGE_SHARE * sheet.clientHeight);
}
