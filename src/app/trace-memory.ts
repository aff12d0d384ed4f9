import type { TraceId } from '../panels/index.ts';
import type { Shelf } from './remembered.ts';

const KEY = 'midwater-traces';

/** What is traced before anybody chose. */
export const USUAL_TRACES: readonly TraceId[] = ['depth', 'speed', 'force', 'jacket'];
const ALL: readonly TraceId[] = [...USUAL_TRACES, 'lungs', 'loop', 'suit', 'cylinder'];

/** Which traces were chosen before; the usual ones where nothing readable is kept. */
export function rememberedTraces(shelf: Shelf | null): readonly TraceId[] {
  try {
    const found: unknown = JSON.parse(shelf?.getItem(KEY) ?? 'null');
    return Array.isArray(found) ? ALL.filter((id) => found.includes(id)) : USUAL_TRACES;
  } catch {
    return USUAL_TRACES;
  }
}

/** Keeps the choice where a browser allows it. */
export function rememberTraces(shelf: Shelf | null, chosen: readonly TraceId[]): void {
  try {
    shelf?.setItem(KEY, JSON.stringify(chosen));
  } catch {
    // What is not kept holds until the page is closed; settings say so.
  }
}
