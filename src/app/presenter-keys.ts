import { usualPlace, type PresentAsk } from '../panels/index.ts';
import { focusOf } from './keys.ts';
import { askedOf } from './presenting-words.ts';
import type { Shell } from './shell.ts';

/** Keys of a clicker and of whoever presents, by their usual places. F5, which clickers send to begin, is not to be moved. */
const ASKS: Readonly<Record<string, PresentAsk>> = {
  PageDown: { do: 'next' },
  PageUp: { do: 'previous' },
  KeyB: { do: 'blank' },
  Period: { do: 'blank' },
  KeyF: { do: 'full-screen' },
  KeyQ: { do: 'strip' },
  Digit6: { do: 'tally', at: 0 },
  Digit7: { do: 'tally', at: 1 },
  Digit8: { do: 'tally', at: 2 },
  Digit9: { do: 'tally', at: 3 },
};

/**
 * Hears the presenter's keys before anything else does. While the stage is blank every other key is kept from the dive under it.
 * Escape is left to the browser, which ends full screen with it; under the paper it does nothing.
 */
export function listenToPresenter(shell: Shell, isBlank: () => boolean, hear: (ask: PresentAsk) => void): void {
  const { window: view, root } = shell;
  const heard = (event: KeyboardEvent) => {
    const shortcut = event.ctrlKey || event.metaKey || event.altKey;
    if (event.code === 'F5' && !shortcut) {
      event.preventDefault();
      if (!root.ownerDocument.fullscreenElement) hear({ do: 'full-screen' });
      return;
    }
    const { moreOpen, settings, place, projector, learn, bench } = shell.view;
    const asked = ASKS[usualPlace(event.code, settings.keys)];
    // Hands are counted while something is asked; else the digits are looks over the water.
    const ask = asked?.do === 'tally' && !askedOf(shell.view) ? undefined : asked;
    const taken =
      ask && !shortcut && !event.repeat && !moreOpen && focusOf(root.ownerDocument.activeElement) !== 'typing';
    // Where a page is read, its keys scroll it.
    const walked = place === 'debrief' && projector && learn?.walk;
    const atBench = place === 'bench' && projector && bench?.lesson;
    const walks = place === 'start' || place === 'fly' || place === 'lesson' || walked || atBench;
    if (taken && (walks || isBlank() || ask.do === 'blank' || ask.do === 'full-screen')) {
      event.preventDefault();
      event.stopImmediatePropagation();
      hear(ask);
    } else if (isBlank() && !['Enter', 'Space', 'Tab'].includes(event.code)) event.stopImmediatePropagation();
  };
  view.addEventListener('keydown', heard, { capture: true });
}
