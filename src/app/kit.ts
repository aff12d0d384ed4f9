import { READY_SETUPS, rigOf, type Setup } from '../diver/index.ts';
import { USUAL_LUNGS, type LungRange } from '../insight/index.ts';
import { lessonSetup, type Lesson } from '../lesson/index.ts';
import { fetchKit, type KitAsk } from '../panels/index.ts';
import { openFile } from './files.ts';
import { carriedKg, carrying, neededKg } from './kit-lead.ts';
import { kitRows, type KitChange } from './kit-rows.ts';
import { kitViewOf } from './kit-shown.ts';
import './kit.css';
import './kit-sizes.css';
import { readySetup } from './setups.ts';
import type { Shell } from './shell.ts';
import { cautionsOf } from './told.ts';

/** Letters that the name of a setup may have in a file. */
const LONGEST_NAME = 80;

/** How the diver is called who is flown. */
const FLOWN_WORDS = 'the diver in the water';

/** What the place needs of the program. */
export interface KitHost {
  /** Who is flown: of a lesson its diver; a saved dive has no setup; the id is that of a ready setup flown as it is, or empty. */
  readonly flown: () => { readonly lesson: Lesson | null; readonly setup: Setup | null; readonly id: string };
  /** @param id of a ready setup that is flown as it is; empty for any other diver */
  readonly fly: (setup: Setup, id: string) => void;
}

/** Diver and water that further changes begin from, between which lung volumes he breathes, and the changes. */
interface Basis {
  readonly setup: Setup;
  readonly lungs: LungRange;
  readonly rows: readonly KitChange[];
}

/** *Kit and water*: a diver, one change at a time, and what it does. The dive in hand stands still meanwhile. */
export class Kit {
  readonly #shell: Shell;
  readonly #host: KitHost;
  #id = '';
  #ownWords = FLOWN_WORDS;
  #own: Setup | null = null;
  readonly #ofLessons = new WeakMap<Lesson, Setup>();
  /** Bases, the latest last; empty before a diver was chosen. */
  #bases: Basis[] = [];
  #triedRow: number | null = null;
  #goesAlong = true;

  constructor(shell: Shell, host: KitHost) {
    this.#shell = shell;
    this.#host = host;
  }

  /** Shows the place. @param id of a ready setup; left out or empty: the diver that is flown, or whoever was here before */
  async open(asked = ''): Promise<void> {
    const { place, prompt } = this.#shell.view;
    // The place that is shown, said again, sets the address back.
    const refuse = (trouble: string) => this.#shell.show({ place, moreOpen: false, trouble });
    if (place === 'lesson' && prompt && prompt.kind !== 'explain')
      return refuse('The prediction first: kit and water might answer it.');
    if (asked && !READY_SETUPS.some((ready) => ready.id === asked)) return refuse(`There is no setup called ${asked}.`);
    await fetchKit();
    const { lesson, id: flownId } = this.#host.flown();
    const own = (asked && this.#own) || (await this.#flownSetup());
    // A ready setup is shown by its id, so that its address brings it back.
    const id = this.#shownId(asked || (lesson ? '' : flownId), own);
    const asBefore = this.#bases.length > 0 && id === this.#id && own === this.#own;
    if (!asBefore) {
      if (own !== this.#own) this.#ownWords = FLOWN_WORDS;
      this.#own = own;
      await this.#choose(id);
    }
    // Who went elsewhere meanwhile stays there.
    if (this.#shell.view.place === place) this.#show();
  }

  /** Does what a person asks of the place. @throws {RangeError} when a setup is asked for that there is none of */
  async hear(ask: KitAsk): Promise<void> {
    if (ask.do === 'choose') await this.#choose(ask.id);
    else if (ask.do === 'file') await this.#openFile(ask.file);
    else if (ask.do === 'try') this.#triedRow = ask.row === this.#triedRow ? null : ask.row;
    else if (ask.do === 'goes-along') {
      this.#goesAlong = ask.on;
      this.#reckonRows();
    } else if (ask.do === 'keep') this.#keep(this.#triedSetup(), this.#triedLungs);
    else if (ask.do === 'carry') this.#keep(carrying(this.#setup, carriedKg(this.#setup) + ask.moreKg));
    else if (ask.do === 'carry-needed') this.#keep(carrying(this.#setup, neededKg(this.#setup)));
    else if (ask.do === 'undo') this.#undo();
    else return this.#fly();
    this.#show();
  }

  #fly(): void {
    const changed = this.#triedRow !== null || this.#bases.length > 1;
    this.#host.fly(this.#triedSetup() ?? this.#setup, changed ? '' : this.#id);
  }

  get #setup(): Setup {
    return this.#bases.at(-1)!.setup;
  }

  get #lungs(): LungRange {
    return this.#bases.at(-1)?.lungs ?? USUAL_LUNGS;
  }

  get #triedLungs(): LungRange {
    return this.#triedRow === null ? this.#lungs : this.#bases.at(-1)!.rows[this.#triedRow]!.hover.lungs;
  }

  #triedSetup(): Setup | null {
    if (this.#triedRow === null) return null;
    const { change, setup } = this.#bases.at(-1)!.rows[this.#triedRow]!;
    // The name says what was changed, as far as a name may be long.
    const name = `${setup.name}; ${change}`;
    return name.length <= LONGEST_NAME ? { ...setup, name } : setup;
  }

  async #flownSetup(): Promise<Setup | null> {
    const { lesson, setup } = this.#host.flown();
    if (!lesson) return setup;
    const known = this.#ofLessons.get(lesson) ?? lessonSetup(lesson, await readySetup(lesson.setup.ready));
    this.#ofLessons.set(lesson, known);
    return known;
  }

  /** A saved dive has no setup to begin from: then a ready one is shown, by its own name. */
  #shownId(id: string, own: Setup | null): string {
    return id || (own ? '' : 'temperate-sea');
  }

  async #choose(id: string): Promise<void> {
    const shown = this.#shownId(id, this.#own);
    const setup = shown || !this.#own ? await readySetup(shown) : this.#own;
    this.#id = shown;
    this.#bases = [];
    this.#keep(setup);
  }

  async #openFile(file: File): Promise<void> {
    const opened = await openFile(file);
    if (opened.kind === 'setup') {
      this.#own = opened.setup;
      this.#ownWords = file.name;
      return this.#choose('');
    }
    this.#shell.show({
      trouble:
        opened.kind === 'run'
          ? `${file.name} is a saved dive. Here a setup is wanted.`
          : `${file.name} was not opened. The diver you have is untouched.`,
      problems: opened.kind === 'problems' ? opened.problems : [],
    });
  }

  #keep(setup: Setup | null, lungs = this.#lungs): void {
    if (!setup) return;
    this.#triedRow = null;
    this.#bases.push({ setup, lungs, rows: kitRows(setup, this.#goesAlong, lungs) });
  }

  #undo(): void {
    if (this.#bases.length > 1) this.#bases.pop();
    this.#triedRow = null;
    this.#reckonRows();
  }

  #reckonRows(): void {
    const { setup, lungs } = this.#bases.pop()!;
    this.#bases.push({ setup, lungs, rows: kitRows(setup, this.#goesAlong, lungs) });
  }

  #view() {
    const { setup, lungs, rows } = this.#bases.at(-1)!;
    return kitViewOf({
      id: this.#id,
      ownWords: this.#own ? this.#ownWords : '',
      setup,
      lungs,
      rows,
      triedRow: this.#triedRow,
      goesAlong: this.#goesAlong,
      canUndo: this.#bases.length > 1,
    });
  }

  #show(): void {
    this.#shell.show({
      place: 'kit',
      kit: this.#view(),
      words: 'Kit and water',
      cautions: cautionsOf(rigOf(this.#triedSetup() ?? this.#setup)),
      progress: '',
      hint: '',
      spoken: '',
      moreOpen: false,
    });
  }
}
