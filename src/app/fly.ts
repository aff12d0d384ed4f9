import { WishEvent, isHeld } from '../panels/index.ts';
import { keepBench } from './keep-bench.ts';
import { actOfKey, focusOf, meaningOf } from './keys.ts';
import { coversWater } from './page-view.ts';
import { keepPlaceKeys } from './place-keys.ts';
import { Program } from './program.ts';
import type { Shell } from './shell.ts';

/** Said when what keeps dives did not come. */
const NOT_KEPT =
  'Dives are not kept this time: a part of the program was not loaded. Save yours as a file before you close the page.';

/** Brings the diver to the page: the picture, the clock, the keys. Fetched after the first paint. */
export async function fly(shell: Shell): Promise<void> {
  const doc = shell.root.ownerDocument;
  const view = shell.window;
  const host = shell.root.querySelector<HTMLElement>('#stage')!;
  const program = await Program.begin(shell, host);

  const fit = () => {
    program.stage.resize(host.clientWidth, host.clientHeight, view.devicePixelRatio);
    program.refresh();
  };
  new ResizeObserver(fit).observe(host);
  fit();

  // Time that a hidden page did not see counts for nothing.
  let lastMs = NaN;
  view.addEventListener('keydown', (event) => {
    const { prompt, moreOpen, settings, place } = shell.view;
    const meaning =
      moreOpen || coversWater(place) || place === 'learn'
        ? null
        : meaningOf(event, focusOf(doc.activeElement), settings.keys);
    // Where nothing is flown the keys are the browser's: arrows scroll. In a debrief there is something to look at.
    if (!meaning || (place === 'debrief' && !('look' in meaning))) return;
    event.preventDefault();
    if ('command' in meaning) program.command(meaning.command);
    else if ('look' in meaning) program.command(meaning.look);
    else if (prompt) return;
    else if (settings.toggles && isHeld(meaning.act)) program.toggle(meaning.act);
    else program.act(meaning.act, true);
  });
  view.addEventListener('keyup', (event) => {
    const act = actOfKey(event.code, shell.view.settings.keys);
    if (act && !(shell.view.settings.toggles && isHeld(act))) program.act(act, false);
  });
  // A button that was clicked must not keep the keys: space would press it again instead of freezing.
  shell.root.addEventListener('click', (event) => {
    const focused = doc.activeElement;
    if (event.detail > 0 && focused instanceof HTMLElement && focused.matches('button')) focused.blur();
  });
  view.addEventListener('blur', () => program.letGo());
  doc.addEventListener('visibilitychange', () => {
    program.letGo();
    lastMs = NaN;
  });

  shell.root.addEventListener('dragover', (event) => event.preventDefault());
  shell.root.addEventListener('drop', (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) shell.root.dispatchEvent(new WishEvent({ kind: 'file', file }));
  });

  // What a first flight does not need comes while nothing else is to do; what fails here is tried again when it is wanted.
  whenIdle(view, () => void program.later.fetchAll(program).catch(() => undefined));

  const missing: string[] = [];
  /** What does not come is said by its name: nothing else waits for it. */
  const bring = (name: string, coming: Promise<unknown>) =>
    coming.catch(() => {
      missing.push(name);
      shell.show({
        trouble: `Not loaded: ${missing.join(', ')}. Everything else goes on; load the page again to have it.`,
      });
    });
  void bring(
    'traces',
    import('./traces.ts').then(({ keepTraces }) => keepTraces(shell, () => program.dives)),
  );
  void bring(
    'a second diver',
    import('./pair-door.ts').then(({ keepPair }) => keepPair(program)),
  );
  keepBench(shell);
  // A press that comes before what it goes to is there is not lost.
  keepPlaceKeys(shell);
  void bring(
    'going back in time',
    import('./time.ts').then(({ keepTime }) => keepTime(program)),
  );
  void bring(
    'sound',
    import('./sound.ts').then(({ keepSound }) => keepSound(shell, () => program.dives)),
  );
  // What was flown before comes back first: the address may say that it is there.
  const kept = import('./kept.ts')
    .then(({ keepDives }) => keepDives(program))
    .catch(() => shell.show({ trouble: NOT_KEPT }));
  // An address may be one of theirs.
  const lessons = bring(
    'lessons',
    import('./lesson-place.ts').then(({ keepLessons }) => keepLessons(program)),
  );
  const address = Promise.all([import('./address.ts'), kept, lessons]);
  void bring(
    'links to places',
    address.then(([{ keepAddress }]) => keepAddress(shell, () => program.lessonId)),
  );

  const frame = (nowMs: number) => {
    const realS = Number.isNaN(lastMs) || doc.hidden ? 0 : (nowMs - lastMs) / 1000;
    lastMs = nowMs;
    program.frame(realS, nowMs);
    view.requestAnimationFrame(frame);
  };
  view.requestAnimationFrame(frame);
}

/** Runs something once the page has nothing else to do; not every browser can say when that is. */
function whenIdle(view: Window, run: () => void): void {
  if ('requestIdleCallback' in view) view.requestIdleCallback(run);
  else setTimeout(run, 1000);
}
