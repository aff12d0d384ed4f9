import {
  WishEvent,
  fetchPresenting,
  type LookToggle,
  type PresentAsk,
  type PresentingView,
  type QuestionSheet,
  type Wish,
} from '../panels/index.ts';
import { Blank } from './blank.ts';
import { DEMONSTRATIONS } from './demonstrations.ts';
import { Flight } from './flight.ts';
import { fillsScreen, turnFullScreen } from './full-screen.ts';
import { Latency } from './latency.ts';
import { OneButton } from './one-button.ts';
import { PadHands } from './pad-hands.ts';
import { listenToPresenter } from './presenter-keys.ts';
import './presenting.css';
import { stripOf } from './presenting-words.ts';
import { readySetup } from './setups.ts';
import type { Presented } from './presented.ts';
import type { Shell } from './shell.ts';
import { keepShow, leftShow, type LeftShow } from './show-memory.ts';
import { neutralStart } from './show-start.ts';
import { Showing } from './showing.ts';
import { Tally } from './tally.ts';

/** How often the place of a demonstration is kept, milliseconds: a reload loses less than a second. */
const KEPT_MS = 400;
/** Pages of a debrief overlap, so that no line is lost; closer to its end than this it is read, pixels. */
const PAGE_SHARE = 0.85;
const NEARLY_PX = 8;
/** How far below the surface one button begins, metres. */
const ONE_BUTTON_M = 8;

/**
 * Presenting to a class by *next* and *back* alone, and all hands that are neither keys on a deck nor fingers: clicker, gamepad,
 * one button. It measures, too, how long a press takes to reach the diver.
 */
export class Presenting {
  readonly #program: Presented;
  readonly #shell: Shell;
  readonly #blank: Blank;
  readonly #pads: PadHands;
  readonly #latency: Latency;
  readonly #oneButton: OneButton;
  #showing: Showing | null = null;
  #listed = false;
  #stripShown = true;
  readonly #tally = new Tally();
  #looked: LookToggle | null = null;
  #told: PresentingView | null = null;
  #toldText = '';
  #kept = '';
  #keptMs = -Infinity;

  private constructor(program: Presented) {
    this.#program = program;
    this.#shell = program.shell;
    const { window: view, root } = this.#shell;
    this.#blank = new Blank(root, () => this.hear({ do: 'blank' }));
    this.#latency = new Latency(view);
    this.#oneButton = new OneButton(program);
    this.#pads = new PadHands(program, this.#latency);
    listenToPresenter(
      this.#shell,
      () => this.#blank.on,
      (ask) => void this.hear(ask),
    );
    view.addEventListener('pagehide', () => this.#keep());
    root.ownerDocument.addEventListener('fullscreenchange', () => this.#tell());
    this.#tell();
  }

  /** Presenting, its panels fetched. */
  static async begin(program: Presented): Promise<Presenting> {
    await fetchPresenting();
    return new Presenting(program);
  }

  /** Before a frame: other hands are looked at. */
  poll(nowMs: number): void {
    if (this.#pads.poll()) this.#tell();
    this.#latency.frame(nowMs);
    if (nowMs - this.#keptMs < KEPT_MS) return;
    this.#keptMs = nowMs;
    this.#keep();
  }

  /** After an act was taken, and after ticks were run: the time between them is measured. */
  acted(): void {
    this.#latency.acted(this.#program.dives.flight.dive.controls);
  }

  ran(): void {
    this.#latency.ran(this.#program.dives.flight.dive.controls, performance.now());
  }

  /** Asked after each change of the hands while time goes on. @returns whether it does */
  goOn(): boolean {
    const showing = this.#live();
    if (!showing) return true;
    const { step } = showing;
    const on = showing.goOn();
    if (showing.step !== step) this.#entered(showing);
    else if (!on) this.#shell.show({ frozen: true });
    return on;
  }

  /** What the page shows of it; the same object as long as nothing changed. */
  view(): PresentingView {
    const now = this.#viewNow();
    const text = JSON.stringify(now);
    if (text !== this.#toldText || !this.#told) {
      this.#toldText = text;
      this.#told = now;
    }
    return this.#told;
  }

  /** An answer to what a demonstration asks: locked, and on it goes. */
  answer(): void {
    const showing = this.#live();
    if (showing?.prompt && showing.next()) this.#entered(showing);
  }

  /** Begins the demonstration in hand anew. @returns whether there is one */
  restart(): boolean {
    const showing = this.#live();
    if (showing) void this.#show(showing.demonstration.id);
    return showing !== null;
  }

  async hear(ask: PresentAsk): Promise<void> {
    if (this.#blank.on && ask.do !== 'full-screen') this.#unblank();
    else if (ask.do === 'blank') this.#hide();
    else if (ask.do === 'next') await this.#next();
    else if (ask.do === 'previous') this.#previous();
    else if (ask.do === 'show') await this.#show(ask.id, ask.resumed);
    else if (ask.do === 'list') this.#openList();
    else if (ask.do === 'list-away') this.#listed = false;
    else if (ask.do === 'strip') this.#stripShown = !this.#stripShown;
    else if (ask.do === 'tally') this.#tally.count(ask.at);
    else if (ask.do === 'clear') this.#tally.clear();
    else if (ask.do === 'pad') this.#pads.wait(ask);
    else if (ask.do === 'full-screen') await turnFullScreen(this.#shell.root.ownerDocument);
    else this.#beginNeutral();
    this.#tell();
  }

  /** The demonstration, as long as its dive is the one in hand. */
  #live(): Showing | null {
    const { dives } = this.#program;
    return this.#showing && dives.lesson === null && dives.flight === this.#showing.flight ? this.#showing : null;
  }

  async #next(): Promise<void> {
    const { place, prompt, frozen, projector, learn } = this.#shell.view;
    const showing = this.#live();
    // What came of it is read to its end before the class goes on.
    if (place === 'debrief')
      return this.#readsOn() ? this.#read(1) : this.#wish({ kind: 'learn', ask: { do: 'show-next' } });
    if (this.#listed) return this.#show(DEMONSTRATIONS[0]!.id);
    if (place === 'start') return this.#wish({ kind: 'place', place: 'teach' });
    // Who learns alone predicts; a class that was not counted passes the question over.
    if (prompt && !showing && !projector && prompt.kind !== 'explain' && prompt.kind !== 'watch') return;
    if (prompt && !showing) {
      // Hands count for letters; what a class called out was set on the sheet.
      const sheet = this.#shell.root.querySelector<QuestionSheet>('question-sheet');
      return this.#wish({ kind: 'answer', answer: this.#tally.said(prompt) ?? sheet?.said ?? null });
    }
    if (showing?.runs && !(showing.isLast && frozen)) return this.#wish({ kind: 'freeze' });
    if (!showing) {
      if (place === 'fly' && !this.#program.dives.begun) return this.#openList();
      return this.#wish({ kind: 'freeze' });
    }
    if (showing.next()) return this.#entered(showing);
    if (learn?.walk) return this.#wish({ kind: 'learn', ask: { do: 'show-next' } });
    const after = DEMONSTRATIONS[DEMONSTRATIONS.indexOf(showing.demonstration) + 1];
    if (after) return this.#show(after.id);
    this.#openList();
  }

  #previous(): void {
    const { place, prompt, frozen } = this.#shell.view;
    const showing = this.#live();
    if (place === 'debrief') this.#read(-1);
    else if (showing) {
      if (showing.previous()) this.#entered(showing);
    } else if (!frozen && !prompt) this.#wish({ kind: 'freeze' });
    else if (place === 'fly') this.#wish({ kind: 'back' });
  }

  #debrief(): Element | null {
    return this.#shell.root.querySelector('debrief-sheet');
  }

  /** Whether something of the debrief lies below what is seen. */
  #readsOn(): boolean {
    const sheet = this.#debrief();
    return sheet !== null && sheet.scrollTop + sheet.clientHeight < sheet.scrollHeight - NEARLY_PX;
  }

  #read(pages: number): void {
    const sheet = this.#debrief();
    sheet?.scrollBy(0, pages * PAGE_SHARE * sheet.clientHeight);
  }

  /** @param resumed goes on where it was left in this tab, if it was */
  async #show(id: string, resumed = false): Promise<void> {
    const demonstration = DEMONSTRATIONS.find((one) => one.id === id);
    if (!demonstration) throw new RangeError(`there is no demonstration ${id}`);
    const { window: view } = this.#shell;
    const left = resumed ? leftShow(view, id) : null;
    const begin = (from: LeftShow | null) => Showing.begin(demonstration, readySetup, from?.place);
    // One that cannot be gone on with, as when the model changed since, begins anew.
    const showing = await begin(left).catch(() => begin(null));
    this.#showing = showing;
    this.#listed = false;
    this.#shell.show({ projector: true });
    this.#entered(showing);
    this.#tally.asked(showing.prompt);
    if (left) {
      this.#tally.counts = left.counts;
      // A run goes on when somebody lets it, not under the eyes of who has just come back.
      this.#shell.show({ frozen: true });
    }
    this.#tell();
  }

  /** Keeps where the demonstration is: a reload, or a link, goes on there. */
  #keep(): void {
    const showing = this.#live();
    if (!showing) return;
    const { counts } = this.#tally;
    const now = [showing.demonstration.id, showing.entered, showing.flight.dive.tick, counts].join();
    if (now === this.#kept) return;
    this.#kept = now;
    keepShow(this.#shell.window, { place: showing.place, counts });
  }

  /** A step was come to: its dive in hand, time standing unless it runs, its look over the water and no other. */
  #entered(showing: Showing): void {
    const { dives } = this.#program;
    const { step, flight } = showing;
    if (dives.flight !== flight) {
      // The address says at once what is shown, not first that it is any dive.
      this.#shell.show({ presenting: { ...this.view(), shown: showing.demonstration.id } });
      dives.practise({ rig: flight.rig, id: '', setup: null }, flight);
    }
    dives.shownBeside = showing.beside;
    // Whoever draws two divers is fetched with the first pair.
    if (dives.shownBeside) this.#wish({ kind: 'pair', ask: { do: 'shown' } });
    this.#program.letGo();
    this.#shell.show({ frozen: !showing.runs, prompt: showing.prompt });
    const look = 'look' in step ? (step.look ?? null) : null;
    if (look !== this.#looked && (look === 'hilltop' || look === 'stops' || look === null))
      this.#wish({ kind: 'look-choice', choice: { look } });
    this.#looked = look;
    this.#tell();
  }

  #openList(): void {
    this.#listed = true;
    if (!this.#shell.view.projector) this.#shell.show({ projector: true });
    if (this.#program.dives.begun && !this.#shell.view.prompt) this.#shell.show({ frozen: true });
  }

  #beginNeutral(): void {
    const { dives } = this.#program;
    const { rig, id, setup } = dives.free;
    dives.practise({ rig, id, setup }, new Flight(rig, neutralStart(rig, ONE_BUTTON_M)));
  }

  #hide(): void {
    this.#shell.show({ moreOpen: false });
    if (this.#program.dives.begun && !this.#shell.view.frozen) this.#shell.show({ frozen: true });
    else this.#blank.stood = true;
    this.#program.letGo();
    this.#blank.show();
  }

  /** Back to the picture; time goes on if it did. */
  #unblank(): void {
    const goesOn = !this.#blank.stood;
    this.#blank.away();
    if (goesOn) this.#shell.show({ frozen: false });
  }

  #viewNow(): PresentingView {
    const showing = this.#live();
    const { place, prompt, settings, learn } = this.#shell.view;
    this.#tally.asked(prompt);
    this.#oneButton.on = settings.oneButton;
    const fullScreen = fillsScreen(this.#shell.root.ownerDocument);
    const flown = place === 'fly' || place === 'lesson' || (place === 'debrief' && learn?.walk);
    return {
      cards: this.#listed && place === 'fly' ? DEMONSTRATIONS : null,
      strip:
        this.#stripShown && flown && this.#shell.view.projector && !this.#listed
          ? stripOf(showing, { ...this.#shell.view, readsOn: this.#readsOn() }, this.#tally.counts, fullScreen)
          : null,
      shown: showing?.demonstration.id ?? null,
      words: showing?.words ?? '',
      hush: showing !== null && !showing.runs && showing.comes?.kind === 'ask',
      prompt: showing?.prompt ?? null,
      pad: this.#pads.view,
      latency: this.#latency.words,
      fullScreen,
    };
  }

  #tell(): void {
    this.#shell.show({ presenting: this.view() });
    this.#program.refresh();
  }

  #wish(wish: Wish): void {
    this.#shell.root.dispatchEvent(new WishEvent(wish));
  }
}
