/** How long is waited for a page that is just going away, milliseconds; on a busy machine a killed one takes its time. */
const PATIENCE_MS = 2000;

/** Lets go of a dive. */
export type LetGo = () => void;

/** Whether this browser can say that a dive is held by another tab. */
export const canHold = (): boolean => 'locks' in navigator;

/**
 * Holds a kept dive for this page, so that no other tab flies the same one; ends with the page, also when it is killed.
 * @returns what lets go of it; null while another tab holds it, or where the browser cannot say
 */
export async function hold(id: number): Promise<LetGo | null> {
  if (!canHold()) return null;
  return new Promise((resolve) => {
    const patience = AbortSignal.timeout(PATIENCE_MS);
    const held = () => new Promise<void>((done) => resolve(() => done()));
    navigator.locks.request(`midwater-dive-${id}`, { signal: patience }, held).catch(() => resolve(null));
  });
}
