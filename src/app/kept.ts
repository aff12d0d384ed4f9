import { TICKS_PER_S } from '../dive/index.ts';
import { WishEvent, fetchKept, USUAL_SETTINGS, type KeptAsk, type KeptView, type Wish } from '../panels/index.ts';
import { Store, StoreProblem, type Keeping, type KeptDive, type KeptSummary } from '../store/index.ts';
import { addressOf, hashOf, shownAddress } from './address.ts';
import { choosesDiver } from './commands.ts';
import type { Dives } from './dives.ts';
import type { Flight } from './flight.ts';
import { saveFile } from './files.ts';
import { forgetSettings } from './forget.ts';
import './kept.css';
import { backInHand } from './kept-back.ts';
import { KeptInHand } from './kept-hand.ts';
import { noteOf, stillSaid, type Said } from './kept-note.ts';
import type { Later } from './later.ts';
import { secondOf } from './own-files.ts';
import { OtherLines } from './other-lines.ts';
import type { Shell } from './shell.ts';
import { storeWords } from './store-words.ts';

/** How often the dive in hand is kept, milliseconds: at twice the usual speed, too, less than a second is lost. */
const KEPT_EVERY_MS = 400;
/** So long after it was last kept a dive comes back by itself, milliseconds; later it is offered, and the page begins as ever. */
const BACK_WITHIN_MS = 30 * 60 * 1000;
/** For so long the page waits for what is kept before it goes where its address says, milliseconds. */
const PATIENCE_MS = 1000;

/** What keeping dives may do with the program. */
export interface Keeper {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly later: Pick<Later, 'fetchLearning'>;
  readonly lessonId: string | null;
  otherLines: OtherLines | null;
  letGo(): void;
  refresh(): void;
}

/** Keeps the dive in hand as it happens, brings the last one back, and shows what is kept. */
export class KeptDives {
  readonly #program: Keeper;
  readonly #shell: Shell;
  readonly #store = new Store(() => this.#erasedElsewhere());
  readonly #clock: (seconds: number) => string;
  readonly #hand: KeptInHand;
  /** The dive in hand when another diver was wished for. */
  #chosenOver: Flight | null = null;
  #said: Said | null = null;
  #cards: KeptView['cards'] = null;
  #words = '';

  constructor(program: Keeper, clock: (seconds: number) => string) {
    this.#program = program;
    this.#shell = program.shell;
    this.#clock = clock;
    this.#hand = new KeptInHand(program, this.#store, (words) => this.#failed(words));
    const view = this.#shell.window;
    view.setInterval(() => this.#follow(), KEPT_EVERY_MS);
    // When the choice is made and the dive that it belongs to is in hand: not before both.
    program.dives.onPair = () => setTimeout(() => this.#follow(), 0);
    view.addEventListener('pagehide', () => this.#follow());
    view.document.addEventListener('visibilitychange', () => this.#follow());
    this.#shell.root.addEventListener('wish', (event) => {
      if (event instanceof WishEvent) this.#hear(event.wish);
    });
    this.#tell();
  }

  /** Brings the last dive back, or offers it; leaves alone whoever has begun to fly meanwhile, and what another tab flies. */
  async bringLast(): Promise<void> {
    try {
      for (const { id } of (await this.#store.list()).filter(({ inHand, damaged }) => inHand && !damaged)) {
        const kept = await this.#readLast(id);
        const held = kept && (await this.#store.goOn(kept, true));
        if (!held || held.elsewhere) continue;
        const { keeping } = held;
        if (!this.#untouched(kept.lessonId)) return await keeping.leave(false);
        if (Date.now() - kept.savedMs < BACK_WITHIN_MS) return await this.#bring(kept, keeping);
        this.#said = { kind: 'offer', kept, keeping };
        return;
      }
    } catch (problem) {
      // Who is told on opening that nothing is kept has nothing to lose yet: it is said in the list, and again when it matters.
      this.#words = storeWords(problem);
    } finally {
      this.#tell();
    }
  }

  /** A dive that was in hand; null, and said, where it is damaged: the one before it may be sound. */
  async #readLast(id: number): Promise<KeptDive | null> {
    try {
      return await this.#store.read(id);
    } catch (problem) {
      if (!(problem instanceof StoreProblem) || problem.fault !== 'damaged') throw problem;
      const words = 'A dive that was kept here is damaged and could not be brought back. It can be removed under more.';
      this.#shell.show({ trouble: words });
      return null;
    }
  }

  #hear(wish: Wish): void {
    if (wish.kind === 'kept') void this.#do(wish.ask);
    else if (choosesDiver(wish)) this.#chosenOver = this.#program.dives.flight;
    else if (wish.kind === 'more' && wish.open) void this.#list();
    // An answer cannot be taken back: it is kept as it is given.
    else if (wish.kind === 'answer' || wish.kind === 'freeze') setTimeout(() => this.#follow(), 0);
  }

  async #do(ask: KeptAsk): Promise<void> {
    try {
      await this.#grant(ask);
    } catch (problem) {
      this.#words = `${storeWords(problem)} The dive you are in is untouched.`;
    }
    // Where all was erased there is nothing to be read, and nothing is begun again by reading.
    if (ask.do !== 'erase') await this.#list();
  }

  async #grant(ask: KeptAsk): Promise<void> {
    this.#words = '';
    if ('id' in ask) return this.#grantOf(ask.id, ask.do);
    if (ask.do === 'erase') return this.#eraseAll();
    if (ask.do === 'anew') return this.#wish({ kind: 'restart' });
    const said = this.#said;
    if (ask.do === 'back-to' && said?.kind === 'left') return this.#grantOf(said.id, 'open');
    if (ask.do === 'bring' && said?.kind === 'offer') return this.#bring(said.kept, said.keeping);
    await this.#unsay();
  }

  async #grantOf(id: number, what: 'open' | 'save' | 'remove'): Promise<void> {
    if (what === 'remove') {
      await this.#store.remove(id);
      this.#words = 'Removed.';
      return;
    }
    const kept = await this.#store.read(id);
    if (what === 'open') return this.#bring(kept, (await this.#store.goOn(kept, false)).keeping);
    const { writeRun } = await import('../dive/file.ts');
    const { name, lessonId, endHash, run, pair, setup, setupId } = kept;
    const second = await secondOf(pair === 'damaged' ? null : pair, setupId || setup);
    const bytes = writeRun(run, { name, ...(lessonId ? { lessonId } : {}), second, endHash });
    saveFile(this.#shell.root.ownerDocument, bytes, 'dive.midwater');
  }

  /** Takes a kept dive in hand, frozen as it was. */
  async #bring(kept: KeptDive, keeping: Keeping): Promise<void> {
    const back = await backInHand(kept, async () => {
      const { LessonFlight, findLesson } = await this.#program.later.fetchLearning();
      return { LessonFlight, find: (id) => findLesson(id, this.#shell.window) };
    });
    this.#hand.takes(back.flight, keeping);
    const { beside, pair } = kept;
    if (beside && beside !== 'damaged') (this.#program.otherLines ??= new OtherLines()).bringBack(back.flight, beside);
    // Before the dive is in hand: it would be kept with whoever dives beside now.
    if (!back.lesson && pair !== undefined) this.#program.dives.pair = pair === 'damaged' ? null : pair;
    this.#program.letGo();
    this.#program.dives.bringBack(back);
    this.#program.refresh();
    if (this.#program.dives.pair) this.#wish({ kind: 'pair', ask: { do: 'shown' } });
    if (kept.projector) this.#shell.show({ projector: true });
    const { dive } = back.flight;
    this.#said = { kind: 'back', kept, dive, tick: dive.tick, lesson: back.lesson !== null, same: back.same };
    this.#follow();
  }

  /** Keeps what is new; notices that the dive that came back goes on. */
  #follow(): void {
    const { dive } = this.#program.dives.flight;
    if (this.#said && !stillSaid(this.#said, dive, () => this.#untouched())) void this.#unsay().catch(() => undefined);
    const left = this.#hand.follow();
    if (left) this.#sayLeft(left.flight, left.keeping.id);
  }

  /** Another diver was chosen, and the dive before was left for him: that it is kept is said until the new one is well under way. */
  #sayLeft(flight: Flight, id: number | null): void {
    const { dive } = this.#program.dives.flight;
    if (id === null || flight !== this.#chosenOver) return;
    this.#said = { kind: 'left', id, dive, fromTick: dive.tick, leftTick: flight.dive.tick };
    this.#tell();
  }

  /** The dive itself goes on in memory. */
  #failed(words: string): void {
    this.#words = words;
    const advice = 'Your dive is only in memory: save it as a file, under more, before you close the page.';
    if (!this.#shell.view.trouble) this.#shell.show({ trouble: `${words} ${advice}` });
    this.#tell();
  }

  async #eraseAll(): Promise<void> {
    forgetSettings(this.#shell.window);
    this.#shell.show({ settings: USUAL_SETTINGS });
    await this.#store.eraseAll();
    this.#cards = [];
    const { begun } = this.#program.dives;
    const still = begun ? ' The dive you are in stays until you close the page, and is not kept.' : '';
    this.#words = `Erased: every kept dive, every result and every setting.${still}`;
    this.#said = null;
    this.#tell();
  }

  #erasedElsewhere(): void {
    const words = 'Everything kept in this browser was erased in another tab.';
    this.#words = words;
    if (this.#program.dives.begun)
      this.#shell.show({ trouble: `${words} The dive you are in is not kept any more; the next one is.` });
    this.#tell();
  }

  async #list(): Promise<void> {
    try {
      const here = this.#hand.id;
      this.#cards = (await this.#store.list()).map((one) => cardOf(one, here));
    } catch (problem) {
      this.#cards = null;
      this.#words ||= storeWords(problem);
    }
    this.#tell();
  }

  /** Nothing was done yet, though the address may have opened the column, or the very lesson that comes back. */
  #untouched(lessonId: string | null = null): boolean {
    const { begun, lesson, flight } = this.#program.dives;
    const { place } = this.#shell.view;
    if (!begun) return place === 'start' || place === 'fly';
    const still = flight.dive.tick === flight.dive.recording.startTick && lesson?.given.length === 0;
    return place === 'lesson' && still && lesson.lesson.id === lessonId;
  }

  /** Says no more what is said; a dive that was offered stays in the list. */
  async #unsay(): Promise<void> {
    const said = this.#said;
    this.#said = null;
    this.#tell();
    if (said?.kind === 'offer') await said.keeping.leave(false);
  }

  #tell(): void {
    const note = this.#said && noteOf(this.#said, (ticks) => this.#clock(ticks / TICKS_PER_S));
    this.#shell.show({ kept: { note, cards: this.#cards, words: this.#words } });
  }

  #wish(wish: Wish): void {
    this.#shell.root.dispatchEvent(new WishEvent(wish));
  }
}

function cardOf({ id, savedMs, name, ticks, lessonId, damaged }: KeptSummary, here: number | null) {
  return { id, savedMs, name, lengthS: ticks / TICKS_PER_S, lesson: lessonId !== null, here: id === here, damaged };
}

/** Begins to keep dives, and brings the last one back. Settles when the page may go where its address says. */
export async function keepDives(program: Keeper): Promise<void> {
  const { minutesAndSeconds } = await fetchKept();
  const kept = new KeptDives(program, minutesAndSeconds);
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS));
  await Promise.race([kept.bringLast(), late]);
  const { shell } = program;
  const { location, history } = shell.window;
  // An address without a place stands for whatever is there; what came back is there.
  const came = shell.view.place === 'fly' || shell.view.place === 'lesson';
  if (came && addressOf(location.hash).place === 'start')
    history.replaceState(null, '', hashOf(shownAddress(shell.view, program.lessonId)));
}
