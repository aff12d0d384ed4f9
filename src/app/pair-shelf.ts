/** What a tab keeps until it is closed, over reloads; null where even asking for it is refused. */
export function tabShelf(view: Window): Storage | null {
  try {
    return view.sessionStorage;
  } catch {
    return null;
  }
}
