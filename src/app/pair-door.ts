import { WishEvent, usualPlace, type PairAsk } from '../panels/index.ts';
import { focusOf } from './keys.ts';
import type { Paired, Pair } from './pair.ts';
import { tabShelf } from './pair-shelf.ts';

/** Keys of two divers, by their usual places. */
const ASKS: Readonly<Record<string, PairAsk>> = { Quote: { do: 'toggle' }, Semicolon: { do: 'swap' } };

/** Lets a second diver be asked for, by a wish or a key; what he needs is fetched then, or when a pair is to come back. */
export function keepPair(program: Paired): void {
  const { shell } = program;
  const { root, window: view } = shell;
  let coming: Promise<Pair> | null = null;
  const get = async (): Promise<Pair | null> => {
    try {
      coming ??= import('./pair.ts').then(({ Pair }) => Pair.begin(program));
      return await coming;
    } catch {
      coming = null;
      shell.show({
        trouble: 'The second diver was not loaded. Check the connection and try again, or load the page again.',
      });
      return null;
    }
  };
  root.addEventListener('wish', (event) => {
    if (!(event instanceof WishEvent)) return;
    const { wish } = event;
    if (wish.kind === 'pair') void get().then((pair) => pair?.hear(wish.ask));
    else if (wish.kind === 'more' && wish.open) void get().then((pair) => pair?.offer());
    else if (wish.kind === 'kept' && wish.ask.do === 'erase') void get().then((pair) => pair?.forget());
  });
  view.addEventListener('keydown', (event) => {
    const ask = ASKS[usualPlace(event.code, shell.view.settings.keys)];
    const { place, prompt, moreOpen } = shell.view;
    const shortcut = event.ctrlKey || event.metaKey || event.altKey || event.repeat;
    if (!ask || shortcut || place !== 'fly' || prompt || moreOpen) return;
    if (focusOf(root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    void get().then((pair) => pair?.hear(ask));
  });
  const { dives } = program;
  // A dive that has come back already may have brought one.
  if (tabShelf(view)?.getItem('midwater-pair') || dives.pair) void get();
  else dives.pair ??= null;
}
