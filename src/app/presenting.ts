import {
  WishEvent,
  fetchPresenting,
  type PresentAsk,
  type PresentingView,
  type QuestionSheet,
  type Wish,
} from '../panels/index.ts';
import type { Answer } from '../lesson/index.ts';
import { Blank } from './blank.ts';
import { readOn, readsOn } from './debrief-pages.ts';
import { DEMONSTRATIONS } from './demonstrations.ts';
import { Flight } from './flight.ts';
import { fillsScreen, turnFullScreen } from './full-screen.ts';
import { Latency } from './latency.ts';
import { OneButton } from './one-button.ts';
import { PadHands } from './pad-hands.ts';
import { listenToPresenter } from './presenter-keys.ts';
import './presenting.css';
import { askedOf, stripOf } from './presenting-words.ts';
import type { Presented } from './presented.ts';
import type { Shell } from './shell.ts';
import { neutralStart } from './show-start.ts';
import { ShowInHand } from './show-hand.ts';
import type { Showing } from './showing.ts';
import { Tally } from './tally.ts';
import { sayingTrouble } from './trouble-words.ts';

/** How often the place of a demonstration is kept, milliseconds: a reload loses less than a second. */
const KEPT_MS = 400;
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
  readonly #tally = new Tally();
  readonly #hand: ShowInHand;
  #listed = false;
  #stripShown = true;
  #told: PresentingView | null = null;
  #toldText = '';
  #keptMs = -Infinity;

  private constructor(program: Presented) {
    this.#program = program;
    this.#shell = program.shell;
    const { window: view, root } = this.#shell;
    this.#hand = new ShowInHand(program, this.#tally, () => this.#tell());
    this.#blank = new Blank(root, () => this.hear({ do: 'blank' }));
    this.#latency = new Latency(view);
    this.#oneButton = new OneButton(program);
    this.#pads = new PadHands(program, this.#latency);
    listenToPresenter(
      this.#shell,
      () => this.#blank.on,
      (ask) => this.hear(ask),
    );
    view.addEventListener('pagehide', () => this.#hand.keep());
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
    // At the bench things come about by themselves, and *next* is another thing then.
    const told = this.#shell.view.place !== 'bench' || this.view() === this.#shell.view.presenting;
    if (this.#pads.poll() || !told) this.#tell();
    this.#latency.frame(nowMs);
    if (nowMs - this.#keptMs < KEPT_MS) return;
    this.#keptMs = nowMs;
    this.#hand.keep();
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
    const showing = this.#hand.live;
    if (!showing) return true;
    const { step } = showing;
    const on = showing.goOn();
    if (showing.step !== step) this.#hand.entered(showing);
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
  answer(answer: Answer): void {
    const showing = this.#hand.live;
    if (!showing?.prompt) return;
    this.#lock(showing, answer);
    if (showing.next()) this.#hand.entered(showing);
  }

  /** The demonstration in hand; null without one. */
  get showing(): Showing | null {
    return this.#hand.live;
  }

  /** Hands counted for an answer to what is asked now; 0 where nobody counted. */
  handsFor(answer: Answer): number {
    return this.#tally.handsFor(askedOf(this.#shell.view), answer);
  }

  /** Begins the demonstration in hand anew. @returns whether there is one */
  restart(): boolean {
    const showing = this.#hand.live;
    if (showing) void sayingTrouble(this.#shell, this.#show(showing.demonstration.id));
    return showing !== null;
  }

  /** What does not work is said. */
  async hear(ask: PresentAsk): Promise<void> {
    await sayingTrouble(this.#shell, this.#hear(ask));
  }

  async #hear(ask: PresentAsk): Promise<void> {
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

  async #next(): Promise<void> {
    const { place, prompt, frozen, projector, learn } = this.#shell.view;
    const showing = this.#hand.live;
    if (place === 'bench') return this.#nextAtBench();
    // What came of it is read to its end before the class goes on.
    if (place === 'debrief')
      return readsOn(this.#shell.root)
        ? readOn(this.#shell.root, 1)
        : this.#wish({ kind: 'learn', ask: { do: 'show-next' } });
    if (this.#listed) return this.#show(DEMONSTRATIONS[0]!.id);
    if (place === 'start') return this.#wish({ kind: 'place', place: 'teach' });
    // Who learns alone predicts; a class that was not counted passes the question over.
    if (prompt && !showing && !projector && prompt.kind !== 'explain' && prompt.kind !== 'watch') return;
    if (prompt && !showing) {
      // Hands count for letters; what a class called out was set on the sheet.
      return this.#wish({ kind: 'answer', answer: this.#answered() });
    }
    if (showing?.runs && !(showing.isLast && frozen)) return this.#wish({ kind: 'freeze' });
    if (!showing) {
      if (place === 'fly' && !this.#program.dives.begun) return this.#openList();
      return this.#wish({ kind: 'freeze' });
    }
    this.#lock(showing, this.#answered());
    if (showing.next()) return this.#hand.entered(showing);
    if (learn?.walk) return this.#wish({ kind: 'learn', ask: { do: 'show-next' } });
    const after = DEMONSTRATIONS[DEMONSTRATIONS.indexOf(showing.demonstration) + 1];
    if (after) return this.#show(after.id);
    this.#openList();
  }

  /** The bench walks its lesson itself; what a class said is locked there first. */
  #nextAtBench(): void {
    const asked = askedOf(this.#shell.view);
    const answer = asked && this.#answered();
    if (answer !== null) this.#wish({ kind: 'answer', answer });
    else this.#wish({ kind: 'bench', ask: { do: 'walk-on' } });
  }

  /** What a class says: by its hands, or as it was set on the sheet. */
  #answered(): Answer {
    const sheet = this.#shell.root.querySelector<QuestionSheet>('question-sheet');
    return this.#tally.said(askedOf(this.#shell.view)) ?? sheet?.said ?? null;
  }

  #lock(showing: Showing, answer: Answer): void {
    if (typeof answer === 'string') showing.lock(answer, this.handsFor(answer));
  }

  #previous(): void {
    const { place, prompt, frozen } = this.#shell.view;
    const showing = this.#hand.live;
    if (place === 'debrief' || place === 'bench') readOn(this.#shell.root, -1);
    else if (showing) {
      if (showing.previous()) this.#hand.entered(showing);
    } else if (!frozen && !prompt) this.#wish({ kind: 'freeze' });
    else if (place === 'fly') this.#wish({ kind: 'back' });
  }

  async #show(id: string, resumed = false): Promise<void> {
    await this.#hand.begin(id, resumed);
    this.#listed = false;
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
    const showing = this.#hand.live;
    const { place, settings, learn, bench } = this.#shell.view;
    this.#tally.asked(askedOf(this.#shell.view));
    this.#oneButton.on = settings.oneButton;
    const fullScreen = fillsScreen(this.#shell.root.ownerDocument);
    const atBench = place === 'bench' && bench?.lesson;
    const flown = place === 'fly' || place === 'lesson' || (place === 'debrief' && learn?.walk) || atBench;
    return {
      cards: this.#listed && place === 'fly' ? DEMONSTRATIONS : null,
      strip:
        this.#stripShown && flown && this.#shell.view.projector && !this.#listed
          ? stripOf(
              showing,
              { ...this.#shell.view, readsOn: readsOn(this.#shell.root) },
              this.#tally.counts,
              fullScreen,
            )
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
