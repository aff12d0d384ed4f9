import { diveAt, type Dive, type Moment } from '../dive/index.ts';
import type { Rig } from '../diver/index.ts';
import { fetchPair, type PairAsk, type PairGroup, type PairSide, type PairView } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import type { Dives } from './dives.ts';
import { openFile } from './files.ts';
import { Flight } from './flight.ts';
import { endWords } from './lines.ts';
import { OtherLines } from './other-lines.ts';
import { PressCount, cylindersMol, sideOf } from './pair-compare.ts';
import { FORMER, OWN, differencesFor, otherOf, type Flown, type Other } from './pair-difference.ts';
import { ownHands } from './pair-keys.ts';
import { PairChosen } from './pair-chosen.ts';
import { isBy, type PairChoice } from './pair-memory.ts';
import { Second } from './pair-second.ts';
import { tabShelf } from './pair-shelf.ts';
import { startBeside } from './pair-start.ts';
import { shownFor } from './pair-zoom.ts';
import { readySetup } from './setups.ts';
import type { Shell } from './shell.ts';
import './pair.css';

/** How often the page is told while time goes on, milliseconds. */
const TOLD_MS = 90;

/** What two divers need of the program. */
export interface Paired {
  readonly shell: Shell;
  readonly dives: Dives;
  /** What is added to the picture before anything looks at it. */
  beside: (view: StageView) => StageView;
  otherLines: OtherLines | null;
  lookAt(atS: number | null): void;
  refresh(): void;
}

/** The second diver of the one who is flown. */
interface Beside {
  readonly rig: Rig;
  readonly other: Other;
  readonly second: Second;
}

/** Two divers in free practice, on one axis of time: whom the second one is, who flies him, and what is shown of both. */
export class Pair {
  readonly #program: Paired;
  readonly #shell: Shell;
  readonly #words: Awaited<ReturnType<typeof fetchPair>>;
  readonly #held: ReturnType<typeof ownHands>;
  readonly #chosen: PairChosen;
  #pair: Beside | null = null;
  #adopting: Rig | null = null;
  #moment: Moment | null = null;
  /** Folded or open as somebody chose it, for a class and else. */
  readonly #foldedFor = new Map<boolean, boolean>();
  #looksAt: 1 | 2 = 1;
  #shownM = 0;
  readonly #presses = [new PressCount(), new PressCount()] as const;
  #sides: readonly [PairSide, PairSide] | null = null;
  #differences: readonly PairGroup[] | null = null;
  #said = '';
  #told = '';
  #toldMs = -Infinity;

  private constructor(program: Paired, words: Awaited<ReturnType<typeof fetchPair>>) {
    this.#program = program;
    this.#shell = program.shell;
    this.#words = words;
    this.#chosen = new PairChosen(program.dives, tabShelf(this.#shell.window));
    this.#held = ownHands(this.#shell, () => this.#choice.by === 'own' && this.#isShown());
    program.beside = (shown) => this.#shown(shown);
    program.refresh();
  }

  /** Two divers for a program, their panels fetched. */
  static async begin(program: Paired): Promise<Pair> {
    return new Pair(program, await fetchPair());
  }

  async hear(ask: PairAsk): Promise<void> {
    this.#said = '';
    const chosen = ask.do === 'toggle' || ask.do === 'away' || ask.do === 'begin' || ask.do === 'swap';
    if (chosen && this.#brought) return;
    if (ask.do === 'toggle') this.#choose({ on: !this.#choice.on });
    else if (ask.do === 'away') this.#choose({ on: false });
    else if (ask.do === 'begin') {
      const { difference, by } = ask;
      this.#choose({ on: true, difference, by: isBy(by) ? by : 'hands' });
    } else if (ask.do === 'fold') this.#foldedFor.set(this.#shell.view.projector, !this.#folded);
    else if (ask.do === 'swap') this.#swap();
    else if (ask.do === 'looks-at') this.#looksAt = ask.diver;
    else if (ask.do === 'file') await this.#open(ask.file);
    this.#tell();
    this.#program.refresh();
  }

  /** Reckons what can be chosen. */
  offer(): void {
    const { own, difference } = this.#choice;
    this.#differences = differencesFor(this.#flown(), own, difference === FORMER);
    this.#tell();
  }

  /** Forgets what was chosen in this tab; the pair that is shown stays. */
  forget(): void {
    this.#chosen.forget();
  }

  get #choice(): PairChoice {
    return this.#chosen.choice;
  }

  /** On a small screen, and for a class, one sentence says it, until somebody wants the table. */
  get #folded(): boolean {
    const { projector } = this.#shell.view;
    const small = this.#shell.window.matchMedia('(max-width: 760px), (max-height: 700px)').matches;
    return this.#foldedFor.get(projector) ?? (projector || small);
  }

  #choose(change: Partial<PairChoice>): void {
    this.#chosen.choose(change);
    this.#drop();
  }

  #drop(): void {
    this.#pair = this.#adopting = this.#moment = null;
    this.#shownM = 0;
    this.#looksAt = 1;
  }

  /** Who is flown; his setup where he has one. */
  #flown(): Flown {
    const { flight, free } = this.#program.dives;
    return { rig: flight.rig, setup: free.rig === flight.rig ? free.setup : null };
  }

  #isShown(): boolean {
    const flown = this.#shell.view.place === 'fly' && this.#program.dives.lesson === null;
    return flown && (this.#choice.on || this.#brought !== null);
  }

  /** The second diver whom a demonstration brings: he stands before one who was chosen, and goes with its dive. */
  get #brought(): Beside | null {
    const { shownBeside, flight } = this.#program.dives;
    return shownBeside?.first === flight ? shownBeside : null;
  }

  /** Finds the second diver of whoever is flown now. */
  async #adopt(): Promise<void> {
    const flown = this.#flown();
    const { rig } = flown;
    if (rig === this.#adopting) return;
    this.#adopting = rig;
    const choice = this.#choice;
    const { difference, by, own, words } = choice;
    try {
      const other = await otherOf(difference, flown, readySetup, own, words);
      if (this.#adopting !== rig || choice !== this.#choice) return;
      const begin: ConstructorParameters<typeof Second>[0]['begin'] = (first) =>
        startBeside(first, other.rig, other.moreJacketM3);
      this.#pair = { rig, other, second: new Second({ rig: other.rig, by, begin, held: this.#held }) };
    } catch (problem) {
      if (choice !== this.#choice) return;
      this.#choose({ on: false });
      this.#said = `No second diver: ${problem instanceof Error ? problem.message : String(problem)}.`;
      this.#shell.show({ trouble: this.#said });
    }
    this.#adopting = null;
    this.#tell();
    this.#program.refresh();
  }

  /** The picture with the second diver, who follows the first to where he is. */
  #shown(view: StageView): StageView {
    const { dives } = this.#program;
    const { flight, lookedBack } = dives;
    const back = this.#chosen.broughtBack();
    if (back !== null) this.#drop();
    if (back) this.#shell.show({ trouble: back });
    const pair = this.#isShown() ? (this.#brought ?? this.#pair) : null;
    dives.second = null;
    if (pair?.rig !== flight.rig) {
      if (this.#isShown()) void this.#adopt();
      this.#compare(null, view);
      return view;
    }
    const { second, other } = pair;
    second.follow(flight.dive);
    dives.second = second.dive;
    if (!lookedBack) this.#moment = second.dive;
    else if (this.#moment?.tick !== lookedBack.tick || this.#moment === second.dive)
      this.#moment = second.momentAt(lookedBack.tick);
    const { rig, state, controls, recording } = this.#moment!;
    const depthM = lookedBack ? state.depthM : second.depthAtM(view.nowS);
    this.#compare([lookedBack ?? flight.dive, this.#moment!], view);
    this.#shownM = shownFor(Math.abs(depthM - view.depthM), this.#shownM);
    const looked = this.#looksAt === 2;
    return {
      ...view,
      metresShown: Math.max(view.metresShown, this.#shownM),
      second: { rig, state, depthM, controls, recording, words: other.words, looked },
    };
  }

  /** Tells the page of both, in its time; of a dive that stands still at once. */
  #compare(both: readonly [Moment, Moment] | null, { frozen }: StageView): void {
    const nowMs = performance.now();
    const runs = !frozen && this.#program.dives.begun;
    const soon = both !== null && runs && nowMs - this.#toldMs < TOLD_MS;
    if ((!both && !this.#sides) || (this.#sides && soon)) return;
    this.#toldMs = nowMs;
    const { flight, second } = this.#program.dives;
    const full = [flight.dive, second].map((dive) => cylindersMol(dive?.kept[0]!.cylinderMol ?? []));
    const [one, two] = this.#presses;
    this.#sides = both && [sideOf(both[0], full[0]!, one), sideOf(both[1], full[1]!, two)];
    this.#tell();
  }

  /** The other one is flown from the moment that is shown; who was flown until now is the second from there on. */
  #swap(): void {
    const pair = this.#pair;
    const { dives } = this.#program;
    const { flight, lookedBack, free, second } = dives;
    if (!pair || !second) return;
    const { frozen } = this.#shell.view;
    const tick = lookedBack?.tick ?? flight.dive.tick;
    const left = diveAt(flight.dive, tick);
    const made = Flight.ofDive(diveAt(second, tick));
    const { rig, setup } = this.#flown();
    const { other } = pair;
    const { by } = this.#choice;
    const former = { rig, setup, moreJacketM3: -other.moreJacketM3, words: other.back, back: other.words };
    const letGo = free.letGoM === undefined ? {} : { letGoM: free.letGoM };
    this.#choose({ difference: FORMER, own: setup, words: other.back, on: true });
    // Who had no setup cannot be had again after a reload.
    if (!setup) this.forget();
    dives.practise({ rig: other.rig, id: '', setup: other.setup, ...letGo }, made);
    if (lookedBack) this.#leaveGhost(flight.dive);
    this.#pair = {
      rig: other.rig,
      other: former,
      second: new Second({
        rig,
        by,
        begin: (first) => startBeside(first, rig, former.moreJacketM3),
        made: { first: made.dive, dive: left },
        held: this.#held,
      }),
    };
    this.#program.lookAt(null);
    this.#shell.show({ frozen });
  }

  /** What the first one flew beyond that moment stays as a ghost, where there is none yet: it is another diver's line, not another way of this one. */
  #leaveGhost(dive: Dive): void {
    const others = (this.#program.otherLines ??= new OtherLines());
    others.ghost ??= { dive, name: endWords(dive), shown: true };
  }

  async #open(file: File): Promise<void> {
    const opened = await openFile(file);
    if (opened.kind === 'setup') {
      this.#choose({ own: opened.setup, difference: OWN, words: '', on: true });
      return this.offer();
    }
    this.#shell.show({
      trouble:
        opened.kind === 'run'
          ? `${file.name} is a saved dive. Here a setup is wanted.`
          : `${file.name} was not opened. The divers you have are untouched.`,
      problems: opened.kind === 'problems' ? opened.problems : [],
    });
  }

  #tell(): void {
    const { settings, looks } = this.#shell.view;
    const sides = this.#isShown() ? this.#sides : null;
    const words = (this.#brought ?? this.#pair)?.other.words ?? '';
    const looking = sides && looks !== null && (looks.choice.look !== null || looks.choice.reach);
    const { difference, by } = this.#choice;
    const pair: PairView = {
      sides,
      words,
      sentence: sides ? this.#words.pairSentence(sides, words, settings.units) : '',
      folded: this.#folded,
      brought: this.#brought !== null,
      looksAt: looking ? this.#looksAt : null,
      difference,
      by,
      differences: this.#differences,
      said: this.#said,
    };
    const told = JSON.stringify(pair);
    if (told === this.#told) return;
    this.#told = told;
    this.#shell.show({ pair });
  }
}
