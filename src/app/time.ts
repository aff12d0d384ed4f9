import { TICKS_PER_S, diveAt, replay, withMishaps, type Dive, type Mishap } from '../dive/index.ts';
import { WishEvent, fetchTime, type MishapAsk, type TimeAsk, type TimeView } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import { Flight } from './flight.ts';
import { released } from './hands.ts';
import { Foot } from './foot.ts';
import { endWords, type Lines } from './lines.ts';
import { OtherLines } from './other-lines.ts';
import { timeStands } from './page-view.ts';
import { stuckWords } from './stuck-words.ts';
import type { Timed } from './timed.ts';
import { listenToTime } from './time-hands.ts';
import { timeViewOf, withLines } from './time-shown.ts';
import './time.css';

/** How often the strip is told while time goes on, milliseconds. */
const TOLD_MS = 90;
/** Closer to the end than this nothing lies between, seconds. */
const NEAR_S = 1 / 240;

/** Time in the hand of whoever looks: the moment looked at, lines that were left, bookmarks, a ghost, and what goes wrong. */
export class Time {
  readonly #program: Timed;
  readonly #others: OtherLines;
  readonly #mishaps = new WeakMap<Flight, readonly Mishap[]>();
  #opened = false;
  #listOpen = false;
  #words = '';
  #seen: { readonly flight: Flight; readonly dive: Dive };
  #told = '';
  #toldMs = -Infinity;
  readonly #foot: Foot;
  #lastMs = NaN;

  private constructor(program: Timed) {
    this.#program = program;
    this.#others = program.otherLines ??= new OtherLines();
    this.#foot = new Foot(program.shell.root);
    const { flight } = program.dives;
    this.#seen = { flight, dive: flight.dive };
    program.adorn = (view) => this.#adorned(view);
    listenToTime(program, (ask) => void this.hear(ask));
    const next = (nowMs: number) => {
      this.#frame(nowMs);
      program.shell.window.requestAnimationFrame(next);
    };
    program.shell.window.requestAnimationFrame(next);
  }

  /** Time for a program, its strip fetched. */
  static async begin(program: Timed): Promise<Time> {
    await fetchTime();
    return new Time(program);
  }

  async hear(ask: TimeAsk): Promise<void> {
    const { dives } = this.#program;
    if (this.#program.shell.view.prompt || (!dives.begun && ask.do !== 'mishap')) return;
    this.#words = '';
    const lines = this.#of(dives.flight);
    if (ask.do === 'open') this.#opened = !(this.#told && this.#opened);
    else if (ask.do === 'list') this.#listOpen = !this.#listOpen;
    else if (ask.do === 'compare') this.#opened = this.#listOpen = !(this.#told && this.#listOpen);
    else if (ask.do === 'step') this.#step(ask.byS);
    else if (ask.do === 'at') this.#look(ask.atS);
    else if (ask.do === 'take-over') this.#takeOver();
    else if (ask.do === 'mark') {
      if (!lines.mark(this.#tick())) this.#words = 'Nine bookmarks are all there are: take one away first.';
    } else if (ask.do === 'last-mark') this.#toMark(lines);
    else if (ask.do === 'switch') this.#switchTo(ask.letter);
    else if (ask.do === 'call') lines.call(ask.letter, ask.name);
    else if (ask.do === 'call-mark') lines.callMark(ask.number, ask.name);
    else if (ask.do === 'mark-away') lines.removeMark(ask.number);
    else if (ask.do === 'line-away') lines.remove(ask.letter);
    else if (ask.do === 'line-shown')
      lines.show(ask.letter, !lines.others.some(({ letter, shown }) => letter === ask.letter && shown));
    else if (ask.do === 'mishap') this.#goWrong(ask.mishap, ask.said);
    else await this.#haunt(ask);
    this.#tell();
    this.#program.refresh();
  }

  /** A line that was looked back at and let go on is gone through as it was flown, and stops at its end. */
  #frame(nowMs: number): void {
    const passedS = Math.min((nowMs - this.#lastMs) / 1000, 0.25) || 0;
    this.#lastMs = nowMs;
    const { dives, shell } = this.#program;
    // A dive that went back, or went another way, has no such moment any more.
    if (dives.lookedBack && dives.lookedBack.recording !== dives.flight.dive.recording) this.#program.lookAt(null);
    const { place, speed, shownAtS, presenting } = shell.view;
    // What is chosen for a class lies where the list would.
    if (presenting?.cards) this.#listOpen = false;
    const flown = place === 'fly' || place === 'lesson';
    if (dives.lookedBack && shownAtS !== null && flown && !timeStands(shell.view)) {
      const atS = shownAtS + passedS * speed;
      if (atS < this.#endS()) this.#program.lookAt(atS);
      else this.#look(null);
    }
    if (nowMs - this.#toldMs < TOLD_MS) return;
    this.#toldMs = nowMs;
    this.#tell();
  }

  #of(flight: Flight): Lines {
    return this.#others.of(flight);
  }

  #endS(): number {
    return this.#program.dives.flight.dive.tick / TICKS_PER_S;
  }

  #tick(): number {
    const { lookedBack, flight } = this.#program.dives;
    return (lookedBack ?? flight.dive).tick;
  }

  #look(atS: number | null): void {
    const { dives, shell } = this.#program;
    if (!shell.view.frozen) shell.show({ frozen: true });
    const startS = dives.flight.dive.recording.startTick / TICKS_PER_S;
    const there = atS === null || atS > this.#endS() - NEAR_S ? null : Math.max(startS, atS);
    this.#program.lookAt(there);
  }

  /** From the end on the dive itself runs, with what is held down. */
  #step(byS: number): void {
    const { dives, shell } = this.#program;
    if (byS < 0 || dives.lookedBack) return this.#look(this.#tick() / TICKS_PER_S + byS);
    if (shell.view.place === 'debrief') return;
    if (!shell.view.frozen) shell.show({ frozen: true });
    for (let left = Math.round(byS * 10); left > 0; left--) {
      const flown = dives.lesson?.view();
      if (flown?.prompt || flown?.done) return;
      this.#program.step();
    }
  }

  /** Flies on from the moment that is looked at; the line that was flown stays beside the new one. */
  #takeOver(): void {
    const { dives, shell } = this.#program;
    const { flight, free } = dives;
    const old = flight.dive;
    const own = shell.view.place === 'fly' && !shell.view.presenting?.words;
    if (own && !dives.lookedBack) return;
    const dive = diveAt(old, this.#tick());
    if (own) {
      const gone = this.#of(flight).leave(old, dive.tick);
      if (gone) this.#words = `Four lines are kept: ${gone.letter}, “${gone.name}”, went for this one.`;
      flight.take(dive);
    } else {
      // What is left behind goes on its own way: its line is kept as it is now.
      const left = diveAt(old, old.tick);
      const made = Flight.ofDive(dive);
      const { rig } = flight;
      dives.practise(free.rig === rig ? free : { rig, id: '', setup: null }, made);
      this.#of(made).leave(left, dive.tick);
    }
    this.#opened = false;
    this.#program.lookAt(null);
    shell.show({ frozen: false });
  }

  #switchTo(letter: string): void {
    const { flight } = this.#program.dives;
    flight.take(this.#of(flight).switchTo(letter, flight.dive));
    this.#look(null);
  }

  /** The bookmark before the moment that is looked at; from the first one round to the last. */
  #toMark({ marks }: Lines): void {
    const before = marks.filter(({ tick }) => tick < this.#tick());
    const to = before[before.length - 1] ?? marks[marks.length - 1];
    if (to) this.#look(to.tick / TICKS_PER_S);
  }

  /** It happens again to who goes back to before it. */
  #goWrong(asked: MishapAsk, said: string): void {
    const { dives, shell } = this.#program;
    const { flight } = dives;
    if (shell.view.place !== 'fly') return;
    dives.begun = true;
    this.#program.lookAt(null);
    if (asked.kind === 'lead-lost') flight.hands = released(flight.hands, flight.rig, false);
    else {
      const mishaps = [...(this.#mishaps.get(flight) ?? []), { ...asked, atS: flight.dive.tick / TICKS_PER_S }];
      this.#mishaps.set(flight, mishaps);
      flight.meddle = (wanted, state) => withMishaps(wanted, mishaps, state);
    }
    shell.show({ frozen: false, spoken: said });
  }

  async #haunt(ask: TimeAsk): Promise<void> {
    const { dive } = this.#program.dives.flight;
    const others = this.#others;
    if (ask.do === 'keep-ghost') others.ghost = { dive: diveAt(dive, dive.tick), name: endWords(dive), shown: true };
    else if (ask.do === 'ghost-away') others.ghost = null;
    else if (ask.do === 'ghost-shown') others.ghost &&= { ...others.ghost, shown: !others.ghost.shown };
    else if (ask.do === 'ghost-file') {
      const { openFile } = await import('./files.ts');
      const opened = await openFile(ask.file);
      if (opened.kind === 'run') others.ghost = { dive: replay(opened.run), name: ask.file.name, shown: true };
      else this.#words = `${ask.file.name} is no saved dive: there is no ghost of it.`;
    }
  }

  /** The picture with the other lines and bookmarks; while something is asked, without. */
  #adorned(view: StageView): StageView {
    const { dives, shell } = this.#program;
    const { flight } = dives;
    const lines = this.#of(flight);
    if (flight === this.#seen.flight && flight.dive !== this.#seen.dive) lines.changed(flight.dive);
    this.#seen = { flight, dive: flight.dive };
    const { prompt, presenting, place } = shell.view;
    // While a lesson is flown it would answer what is asked later on.
    const ghost = place === 'fly' || place === 'debrief' ? this.#others.ghost : null;
    const more = { coveredPx: this.#foot.coveredPx(), cards: this.#foot.cards(), told: this.#toldOf(flight) };
    if (prompt || presenting?.hush || (lines.others.length === 0 && lines.marks.length === 0 && !ghost?.shown))
      return { ...view, ...more };
    return { ...withLines(view, lines, ghost), ...more };
  }

  /** Valves that stick, and that do no more. */
  #toldOf(flight: Flight): StageView['told'] {
    return stuckWords(this.#mishaps.get(flight) ?? []);
  }

  #tell(): void {
    const { shell } = this.#program;
    const shown = this.#isShown() ? this.#viewNow() : null;
    const told = shown ? JSON.stringify(shown) : '';
    if (told === this.#told) return;
    this.#told = told;
    shell.show({ time: shown });
    // What the strip covers has changed.
    this.#program.refresh();
  }

  /**
   * While somebody looks back, and while a free dive stands still that is no demonstration; else where it was asked for. One that
   * came back leaves its place to what is said of it.
   */
  #isShown(): boolean {
    const { dives, shell } = this.#program;
    const { place, prompt, frozen, presenting, shownAtS, kept, flownBy } = shell.view;
    if (!dives.begun || prompt || this.#endS() === dives.flight.dive.recording.startTick / TICKS_PER_S) return false;
    if (place !== 'fly' && place !== 'lesson' && place !== 'debrief') return false;
    // A dive or lesson that came back is frozen, and can be rewound from the first look on; a debrief has its own ways to moments.
    const back = kept?.note?.kind === 'back' && place !== 'debrief';
    const stands =
      frozen && ((place === 'fly' && !presenting?.words) || (place === 'lesson' && flownBy !== null) || back);
    return this.#opened || shownAtS !== null || stands;
  }

  #viewNow(): TimeView {
    const { dives, shell } = this.#program;
    const { flight, lookedBack } = dives;
    const { place, presenting, flownBy } = shell.view;
    return timeViewOf(flight.dive, this.#of(flight), {
      ghost: this.#others.ghost,
      tick: this.#tick(),
      lookedBack: lookedBack !== null,
      canTakeOver: lookedBack !== null || place === 'debrief' || flownBy !== null || Boolean(presenting?.words),
      listOpen: this.#listOpen,
      words: this.#words,
    });
  }
}

/** Gives a program its time; wishes are heard once the strip is there. */
export async function keepTime(program: Timed): Promise<void> {
  const time = await Time.begin(program);
  program.shell.root.addEventListener('wish', (event) => {
    if (event instanceof WishEvent && event.wish.kind === 'time') void time.hear(event.wish.ask);
  });
}
