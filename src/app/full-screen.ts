/** Whether the page fills the screen; null where the browser knows no such thing. */
export function fillsScreen(doc: Document): boolean | null {
  return doc.fullscreenEnabled ? doc.fullscreenElement !== null : null;
}

/** Fills the screen with the page, or gives it back. A browser may refuse; then nothing changes. */
export async function turnFullScreen(doc: Document): Promise<void> {
  if (doc.fullscreenElement) await doc.exitFullscreen().catch(() => undefined);
  else if (doc.fullscreenEnabled) await doc.documentElement.requestFullscreen().catch(() => undefined);
}
