import { WishEvent, type Debrief, type DebriefAsk, type Wish } from '../panels/index.ts';
import { Store, type KeptResult } from '../store/index.ts';
import { besideOf, choiceOfGhost, choicesOf } from './debrief-compare.ts';
import { knownOf } from './debrief-known.ts';
import './debrief.css';
import './debrief-line.css';
import type { LessonFlight } from './lesson-flight.ts';
import { OtherLines, type Ghost } from './other-lines.ts';
import { resultOf } from './results.ts';
import type { Shell } from './shell.ts';
import { storeWords } from './store-words.ts';

/** What a debrief may do with the program. */
export interface Debriefed {
  readonly shell: Shell;
  readonly dives: { readonly lesson: LessonFlight | null };
  otherLines: OtherLines | null;
  desk: DebriefDesk | null;
  refresh(): void;
}

/** A debrief while it is open: keeps its result once, brings what earlier flights add, and flies others beside it. */
export class DebriefDesk {
  readonly #program: Debriefed;
  readonly #flown: LessonFlight;
  readonly #store = new Store();
  readonly #hears = (event: Event) => {
    if (event instanceof WishEvent) this.#hear(event.wish);
  };
  #view: Debrief;
  #results: readonly KeptResult[] = [];
  #kept: KeptResult | null = null;
  #ghost: Ghost | null = null;
  #over = false;

  constructor(program: Debriefed, flown: LessonFlight) {
    this.#program = program;
    this.#flown = flown;
    const choices = choicesOf(flown.lesson.id, []);
    const view = flown.debrief();
    this.#view = { ...view, compare: { ...view.compare, choices } };
    program.shell.show({ place: 'debrief', debrief: this.#view });
    program.shell.root.addEventListener('wish', this.#hears);
    // A line that came back with its dive stands for what was compared.
    const before = choiceOfGhost(program.otherLines?.ghost?.name);
    if (before) void this.#compare(before);
    void this.#learn();
  }

  /** It is left. */
  end(): void {
    if (this.#over) return;
    this.#over = true;
    this.#program.shell.root.removeEventListener('wish', this.#hears);
    this.#ghostAway();
    this.#store.close();
  }

  #hear(wish: Wish): void {
    if (wish.kind === 'debrief') void this.#do(wish.ask);
    else if (wish.kind === 'kept' && wish.ask.do === 'erase') this.#know([], null, '');
    // What a wish comes to is seen once everybody has heard it.
    setTimeout(() => {
      if (this.#program.shell.view.place !== 'debrief') this.end();
    }, 0);
  }

  async #do(ask: DebriefAsk): Promise<void> {
    if (ask.do === 'compare') return this.#compare(ask.with);
    if (!this.#kept) return;
    try {
      await this.#store.writeWord(this.#kept.id, ask.word);
      this.#kept = { ...this.#kept, word: ask.word };
      this.#know(this.#results, this.#kept, 'Kept in this browser.');
    } catch (problem) {
      this.#know(this.#results, this.#kept, `${storeWords(problem)} The word is not kept.`);
    }
  }

  /** Keeps the result, once however often the debrief is opened, and reads what else is kept. A simulated diver's is nobody's. */
  async #learn(): Promise<void> {
    const result = resultOf(this.#flown, this.#view, new Date().toISOString());
    try {
      const kept = this.#flown.by === null ? await this.#store.addResult(result) : null;
      const [results, dives] = await Promise.all([this.#store.results(), this.#store.list()]);
      this.#know(results, kept, '');
      this.#show({ compare: { ...this.#view.compare, choices: choicesOf(this.#flown.lesson.id, dives) } });
    } catch (problem) {
      this.#know([], null, storeWords(problem));
    }
  }

  #know(results: readonly KeptResult[], kept: KeptResult | null, words: string): void {
    this.#results = results;
    this.#kept = kept;
    const { opened } = this.#program.shell.view.settings;
    this.#show({ known: knownOf(this.#flown, this.#view, results, kept, words, opened) });
  }

  async #compare(chosen: string): Promise<void> {
    const { compare } = this.#view;
    this.#ghostAway();
    const nobody = { ...compare, chosen, name: '', marks: null };
    this.#show({ compare: { ...nobody, says: chosen ? 'Flying …' : '' } });
    if (!chosen) return;
    const wanted = () => !this.#over && this.#view.compare.chosen === chosen;
    try {
      const beside = await besideOf(this.#flown, chosen, this.#store, wanted);
      if (!beside || !wanted()) return;
      const { name, says, dive, marks } = beside;
      const others = (this.#program.otherLines ??= new OtherLines());
      others.ghost = this.#ghost = { dive, name, shown: true };
      this.#show({ compare: { ...this.#view.compare, name, says, marks } });
    } catch (problem) {
      const says = problem instanceof Error ? problem.message : String(problem);
      if (wanted()) this.#show({ compare: { ...this.#view.compare, says } });
    }
  }

  #ghostAway(): void {
    const { otherLines } = this.#program;
    if (otherLines?.ghost && (otherLines.ghost === this.#ghost || choiceOfGhost(otherLines.ghost.name)))
      otherLines.ghost = null;
    this.#ghost = null;
    this.#program.refresh();
  }

  #show(change: Partial<Debrief>): void {
    this.#view = { ...this.#view, ...change };
    if (this.#over || this.#program.shell.view.place !== 'debrief') return;
    this.#program.shell.show({ debrief: this.#view });
    this.#program.refresh();
  }
}

/** Opens the debrief of the lesson in hand, which was flown to its end. */
export function debriefed(program: Debriefed): void {
  program.desk?.end();
  program.desk = new DebriefDesk(program, program.dives.lesson!);
}
