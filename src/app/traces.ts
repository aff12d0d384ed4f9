import { WishEvent, fetchTraces, usualPlace, type TraceAsk, type TracesView } from '../panels/index.ts';
import type { Dives } from './dives.ts';
import { saveFile } from './files.ts';
import { focusOf } from './keys.ts';
import { DOWN_MPS, UP_MPS } from './rates.ts';
import { shelfOf } from './remembered.ts';
import type { Shell } from './shell.ts';
import { rememberTraces, rememberedTraces } from './trace-memory.ts';
import './traces.css';

/** How often the panel is told while it is open, milliseconds: a recording has ten rows a second. */
const TOLD_MS = 90;

/** The traces under the water: opened by their key and by buttons, told what was recorded, and what somebody reads shown in the water. */
export class Traces {
  readonly #shell: Shell;
  readonly #dives: () => Dives;
  readonly #kindsOf: Awaited<ReturnType<typeof fetchTraces>>['traceKinds'];
  #open = false;
  #chosen: TracesView['chosen'];
  #toldMs = -Infinity;
  #told = '';
  #recording: TracesView['recording'] | null = null;
  #second: TracesView['second'] = null;
  #readS: number | null | undefined;

  constructor(shell: Shell, dives: () => Dives, kindsOf: Awaited<ReturnType<typeof fetchTraces>>['traceKinds']) {
    this.#shell = shell;
    this.#dives = dives;
    this.#kindsOf = kindsOf;
    this.#chosen = rememberedTraces(shelfOf(shell.window));
  }

  hear(ask: TraceAsk): void {
    if (ask.do === 'save') return saveFile(this.#shell.root.ownerDocument, ask.bytes, ask.name);
    if (ask.do === 'not-saved')
      return this.#shell.show({ trouble: 'This browser made no picture of the traces: their numbers can be saved.' });
    if (ask.do === 'read') {
      this.#readS = ask.atS;
      return;
    }
    if (ask.do === 'choose') {
      const { id } = ask;
      this.#chosen = this.#chosen.includes(id) ? this.#chosen.filter((one) => one !== id) : [...this.#chosen, id];
      rememberTraces(shelfOf(this.#shell.window), this.#chosen);
    } else {
      this.#open = ask.do === 'toggle' && !this.#open;
      // A menu that the traces were opened from has done its work.
      if (this.#shell.view.looks?.menuOpen) this.#wish({ kind: 'look-menu', open: false });
      if (this.#open) this.#next();
    }
    this.#told = '';
    this.#tell();
  }

  /** Frame by frame while it is open. */
  #next(): void {
    this.#shell.window.requestAnimationFrame((nowMs) => {
      if (!this.#open) return;
      if (nowMs - this.#toldMs >= TOLD_MS) {
        this.#toldMs = nowMs;
        this.#follow();
        this.#tell();
      }
      this.#next();
    });
  }

  /** In the debrief the water shows the moment that is read. The same moment wished once more would go back to the end. */
  #follow(): void {
    const readS = this.#readS;
    this.#readS = undefined;
    const { place, shownAtS } = this.#shell.view;
    if (readS === undefined || place !== 'debrief' || readS === shownAtS) return;
    this.#wish({ kind: 'moment', atS: readS ?? shownAtS! });
  }

  #tell(): void {
    const { view } = this.#shell;
    const shown = this.#open ? this.#viewNow() : null;
    if (shown === null) {
      if (view.traces) this.#shell.show({ traces: null });
      return;
    }
    const { recording, second, kinds, ...rest } = shown;
    const told = JSON.stringify([recording.rows, rest]);
    if (told === this.#told && recording === this.#recording && second === this.#second) return;
    this.#told = told;
    this.#recording = recording;
    this.#second = second;
    this.#shell.show({ traces: shown });
  }

  #viewNow(): TracesView {
    const { flight, lesson, second } = this.#dives();
    const { settings, projector, shownAtS } = this.#shell.view;
    const free = [{ fromS: -Infinity, limits: { upMps: UP_MPS, downMps: DOWN_MPS } }];
    return {
      recording: flight.dive.recording,
      kinds: this.#kindsOf(flight.rig),
      events: flight.dive.events,
      second: second?.recording ?? null,
      bands: lesson?.view().bands ?? [],
      limits: lesson?.limitsBefore() ?? free,
      chosen: this.#chosen,
      units: settings.units,
      theme: this.#shell.theme,
      projector,
      shownAtS,
    };
  }

  #wish(wish: ConstructorParameters<typeof WishEvent>[0]): void {
    this.#shell.root.dispatchEvent(new WishEvent(wish));
  }
}

/** Lets the traces be asked for: by a wish from a button, and by their key. Panel and plot are fetched the first time. */
export function keepTraces(shell: Shell, dives: () => Dives): void {
  let traces: Promise<Traces> | null = null;
  const hear = async (ask: TraceAsk) => {
    try {
      traces ??= fetchTraces().then(({ traceKinds }) => new Traces(shell, dives, traceKinds));
      (await traces).hear(ask);
    } catch {
      traces = null;
      shell.show({
        trouble: 'The traces were not loaded. Check the connection and try again, or load the page again.',
      });
    }
  };
  shell.root.addEventListener('wish', (event) => {
    if (event instanceof WishEvent && event.wish.kind === 'traces') void hear(event.wish.ask);
  });
  shell.window.addEventListener('keydown', (event) => {
    const { place, prompt, moreOpen, settings } = shell.view;
    const shortcut = event.ctrlKey || event.metaKey || event.altKey || event.repeat;
    const flown = place === 'fly' || place === 'lesson' || place === 'debrief';
    if (shortcut || !flown || prompt || moreOpen || usualPlace(event.code, settings.keys) !== 'KeyT') return;
    if (focusOf(shell.root.ownerDocument.activeElement) !== 'typing') void hear({ do: 'toggle' });
  });
}
