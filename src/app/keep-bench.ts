import { WishEvent, type Wish } from '../panels/index.ts';
import type { BenchPlace } from './bench-place.ts';
import type { Shell } from './shell.ts';
import { sayingTrouble } from './trouble-words.ts';

/** Hears what is wished of the bench, which is fetched with the first of it; what does not come, or is not allowed, is said. */
export function keepBench(shell: Shell): void {
  let begun: Promise<BenchPlace> | null = null;
  const place = () =>
    (begun ??= import('./bench-place.ts')
      .then(({ BenchPlace }) => BenchPlace.begin(shell))
      // What did not come is fetched again with the next wish.
      .catch((problem: unknown) => {
        begun = null;
        throw problem;
      }));

  const hear = async (wish: Wish): Promise<void> => {
    const { prompt, place: from } = shell.view;
    if (wish.kind === 'place' && wish.place === 'bench') {
      // The place that is shown, said again, sets the address back.
      if (from === 'lesson' && prompt && prompt.kind !== 'explain')
        return shell.show({ place: from, moreOpen: false, trouble: 'The prediction first: then the bench.' });
      (await place()).open(wish.mode ?? 'tank');
    } else if (wish.kind === 'bench') {
      const { ask } = wish;
      const bench = await place();
      if (ask.do === 'lesson') await bench.learn(ask.id, ask.resumed);
      else bench.hear(ask);
    }
  };
  shell.root.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) void sayingTrouble(shell, hear(event.wish));
  });
}
