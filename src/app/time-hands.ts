import { TICKS_PER_S } from '../dive/index.ts';
import { usualPlace, type TimeAsk } from '../panels/index.ts';
import { focusOf } from './keys.ts';
import type { Timed } from './timed.ts';

/** Seconds for each metre that the paper is wide: 9 m/min is 45°. */
const SECONDS_PER_METRE = 1 / 0.15;
/** A pointer that moved less, pixels, has pressed and not pulled. */
const PULLED_PX = 8;

/** Keys of time, by their usual places; with shift a step is a second. */
const ASKS: Readonly<Record<string, TimeAsk>> = {
  BracketLeft: { do: 'step', byS: -0.1 },
  BracketRight: { do: 'step', byS: 0.1 },
  KeyV: { do: 'take-over' },
  KeyM: { do: 'mark' },
  KeyA: { do: 'last-mark' },
  Comma: { do: 'open' },
};

/** Hears the keys of time, and a frozen paper that is pulled along by a pointer: to the right is back. */
export function listenToTime(program: Timed, hear: (ask: TimeAsk) => void): void {
  const { shell, dives } = program;
  const { root, window: view } = shell;
  const flown = () => {
    const { place, prompt, moreOpen } = shell.view;
    return dives.begun && !prompt && !moreOpen && (place === 'fly' || place === 'lesson' || place === 'debrief');
  };
  view.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && shell.view.time?.listOpen && flown()) return hear({ do: 'list' });
    const ask = ASKS[usualPlace(event.code, shell.view.settings.keys)];
    const shortcut = event.ctrlKey || event.metaKey || event.altKey;
    if (!ask || shortcut || !flown() || (event.repeat && ask.do !== 'step')) return;
    if (focusOf(root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    hear(ask.do === 'step' && event.shiftKey ? { do: 'step', byS: ask.byS * 10 } : ask);
  });

  const stage = root.querySelector<HTMLElement>('#stage')!;
  let pulled: { readonly id: number; readonly x: number; readonly atS: number } | null = null;
  stage.addEventListener('pointerdown', (event) => {
    const { frozen, place, settings } = shell.view;
    if (!flown() || settings.oneButton || event.button !== 0 || !(frozen || place === 'debrief')) return;
    const { tick } = dives.lookedBack ?? dives.flight.dive;
    pulled = { id: event.pointerId, x: event.clientX, atS: tick / TICKS_PER_S };
  });
  stage.addEventListener('pointermove', (event) => {
    if (pulled?.id !== event.pointerId) return;
    const byPx = event.clientX - pulled.x;
    if (!stage.hasPointerCapture(event.pointerId)) {
      if (Math.abs(byPx) < PULLED_PX) return;
      stage.setPointerCapture(event.pointerId);
    }
    const atS = pulled.atS - (byPx / program.stage.pxPerM) * SECONDS_PER_METRE;
    hear({ do: 'at', atS: Math.round(Math.max(0, atS) * 10) / 10 });
  });
  // Who has not pulled yet may let go anywhere on the page; who lets go outside of it comes back with no button down.
  for (const kind of ['pointerup', 'pointercancel'] as const) view.addEventListener(kind, () => (pulled = null));
  view.addEventListener('pointermove', ({ buttons }) => buttons === 0 && (pulled = null), { capture: true });
}
