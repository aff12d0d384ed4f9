import type { ShowPlace } from './show-place.ts';

const KEY = 'midwater-show';

/** A demonstration as it was left: its place, and hands that were counted. */
export interface LeftShow {
  readonly place: ShowPlace;
  readonly counts: readonly number[];
}

/** Keeps where a demonstration is for as long as the tab lives; a browser may refuse. */
export function keepShow(view: Window, left: LeftShow): void {
  try {
    view.sessionStorage.setItem(KEY, JSON.stringify(left));
  } catch {
    // It begins anew after a reload, and nothing else is lost.
  }
}

/** What was left of a demonstration; null where there is nothing, or nothing that can be read. */
export function leftShow(view: Window, id: string): LeftShow | null {
  try {
    const found = JSON.parse(view.sessionStorage.getItem(KEY) ?? 'null') as LeftShow | null;
    return found?.place.id === id ? found : null;
  } catch {
    return null;
  }
}
