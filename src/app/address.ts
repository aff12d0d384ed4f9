import type { BenchMode } from '../bench/index.ts';
import type { Demonstrator } from '../lesson/index.ts';
import { WishEvent } from '../panels/index.ts';
import type { PageView } from './page-view.ts';
import type { Shell } from './shell.ts';
import { leftWatch } from './watch-memory.ts';

/** Where a person is, as the address of the page says it. */
export type Address =
  | { readonly place: 'start' | 'column' | 'lessons' | 'tables' | 'debrief' }
  | { readonly place: 'lesson' | 'show'; readonly id: string }
  /** A lesson that a simulated diver flies. */
  | { readonly place: 'watch'; readonly id: string; readonly by: Demonstrator }
  | { readonly place: 'kit'; readonly id: string }
  | { readonly place: 'bench'; readonly mode: BenchMode };

/** Places that follow on another by themselves: the first press, the end of a lesson. */
const GOES_ON: Partial<Record<Address['place'], Address['place']>> = {
  start: 'column',
  lesson: 'debrief',
  watch: 'debrief',
};

/** What ids look like; anything else in an address is no id. */
const ID = /^[a-z0-9][a-z0-9-]{0,63}$/;

/** The address that the part of a link after # stands for; what is not understood is the start. */
export function addressOf(hash: string): Address {
  const [, place = '', id = '', more] = hash.replace(/^#/, '').split('/');
  if (more !== undefined || (id !== '' && !ID.test(id))) return { place: 'start' };
  if (place === 'kit') return { place, id };
  if (place === 'bench' && (id === '' || id === 'deep' || id === 'bottle')) return { place, mode: id || 'tank' };
  if (place === 'show' && id) return { place, id };
  if (place === 'watch') return watched(id);
  if (place === 'lessons') return id ? { place: 'lesson', id } : { place };
  if ((place === 'column' || place === 'tables' || place === 'debrief') && !id) return { place };
  return { place: 'start' };
}

/** Two hyphens stand between a lesson and who flies it. */
function watched(id: string): Address {
  const [lesson = '', by = ''] = id.split('--');
  return lesson && by ? { place: 'watch', id: lesson, by: by as Demonstrator } : { place: 'start' };
}

/** Whether a link goes to the lesson or demonstration of an id, and to none whose own id only begins like it. */
export function goesTo(hash: string, id: string): boolean {
  const address = addressOf(hash);
  return 'id' in address && address.id === id;
}

/** Whether an address that was left, too, goes to a lesson: its debrief does, as long as the lesson was watched. */
export function goesBackTo(view: Window, hash: string, id: string): boolean {
  return goesTo(hash, id) || (addressOf(hash).place === 'debrief' && leftWatch(view)?.id === id);
}

/** The part of a link after #, with it. */
export function hashOf(address: Address): string {
  if (address.place === 'start') return '#/';
  if (address.place === 'lesson') return `#/lessons/${address.id}`;
  if (address.place === 'watch') return `#/watch/${address.id}--${address.by}`;
  if (address.place === 'show') return `#/show/${address.id}`;
  if (address.place === 'kit') return address.id ? `#/kit/${address.id}` : '#/kit';
  if (address.place === 'bench') return address.mode === 'tank' ? '#/bench' : `#/bench/${address.mode}`;
  return `#/${address.place}`;
}

/** The address of what the page shows. */
export function shownAddress(view: PageView, lessonId: string | null): Address {
  if (view.place === 'kit') return { place: 'kit', id: view.kit?.setupId ?? '' };
  if (view.place === 'bench' && view.bench?.lesson) return { place: 'lesson', id: view.bench.lesson.id };
  if (view.place === 'bench') return { place: 'bench', mode: view.bench?.deep?.kind ?? 'tank' };
  if (view.place === 'lesson' && lessonId)
    return view.flownBy ? { place: 'watch', id: lessonId, by: view.flownBy } : { place: 'lesson', id: lessonId };
  if (view.place === 'learn' && view.learn?.tried) return { place: 'tables' };
  const shown = view.presenting?.shown;
  if (view.place === 'fly' && shown) return { place: 'show', id: shown };
  const place = { start: 'start', fly: 'column', learn: 'lessons', lesson: 'lessons', debrief: 'debrief' } as const;
  return { place: place[view.place] };
}

/**
 * Keeps the address and the page together. Another place is a step that the browser's back undoes; the first press that begins
 * a dive, and another setup in the same place, are none. Whoever comes by a link, by back or by reload is taken there.
 */
export function keepAddress(shell: Shell, lessonId: () => string | null): void {
  const { window: view, root } = shell;
  const here = () => shownAddress(shell.view, lessonId());
  let shown = here();
  let going = false;

  const write = () => {
    const now = here();
    const same = hashOf(now) === view.location.hash;
    const inPlace = going || now.place === shown.place || GOES_ON[shown.place] === now.place;
    shown = now;
    going = false;
    if (same || (now.place === 'start' && view.location.hash === '')) return;
    if (inPlace) view.history.replaceState(null, '', hashOf(now));
    else view.history.pushState(null, '', hashOf(now));
  };
  const go = () => {
    const wanted = addressOf(view.location.hash);
    if (hashOf(wanted) === hashOf(here())) return;
    going = true;
    root.dispatchEvent(new WishEvent(wishOf(wanted)));
  };

  shell.onPlace = write;
  // Back and forward and a changed link are the same to us: both come with this event.
  view.addEventListener('popstate', go);
  const left = addressOf(view.location.hash).place === 'debrief' ? leftWatch(view) : null;
  // What was watched to its end is read on; what somebody flew himself comes back with his dive.
  if (left && !lessonId()) {
    going = true;
    root.dispatchEvent(new WishEvent(wishOf({ place: 'watch', id: left.id, by: left.by })));
  } else if (view.location.hash) go();
  // Whoever was quicker than this is somewhere already.
  else write();
}

function wishOf(address: Address): WishEvent['wish'] {
  if (address.place === 'lesson') return { kind: 'lesson', id: address.id, resumed: true };
  if (address.place === 'watch') return { kind: 'lesson', id: address.id, by: address.by, resumed: true };
  if (address.place === 'tables') return { kind: 'learn', ask: { do: 'tables' } };
  if (address.place === 'show') return { kind: 'present', ask: { do: 'show', id: address.id, resumed: true } };
  if (address.place === 'kit') return { kind: 'place', place: 'kit', id: address.id };
  if (address.place === 'bench') return { kind: 'place', place: 'bench', mode: address.mode };
  if (address.place === 'lessons') return { kind: 'place', place: 'learn' };
  return { kind: 'place', place: address.place };
}
