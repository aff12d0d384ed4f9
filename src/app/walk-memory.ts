import type { CoursePath } from '../lesson/index.ts';

const KEY = 'midwater-walk';

/** Where a path that is walked before a class is: which path, and which of its stops. */
export interface Walk {
  readonly path: CoursePath;
  readonly at: number;
}

/** Keeps where a walk is for as long as the tab lives; a browser may refuse. */
export function keepWalk(view: Window, walk: Walk | null): void {
  try {
    if (walk) view.sessionStorage.setItem(KEY, JSON.stringify(walk));
    else view.sessionStorage.removeItem(KEY);
  } catch {
    // After a reload the path is chosen again.
  }
}

/** The walk that was left; null where there is none, or nothing that can be read. */
export function leftWalk(view: Window): Walk | null {
  try {
    const found = JSON.parse(view.sessionStorage.getItem(KEY) ?? 'null') as Partial<Walk> | null;
    return found?.path && Number.isInteger(found.at) ? { path: found.path, at: found.at! } : null;
  } catch {
    return null;
  }
}
