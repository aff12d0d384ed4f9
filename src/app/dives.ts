import { rigOf, type Rig, type Setup } from '../diver/index.ts';
import type { RunSecond } from '../dive/file.ts';
import type { Dive, Moment, Run } from '../dive/index.ts';
import { WishEvent } from '../panels/index.ts';
import type { KeptPair } from '../store/index.ts';
import { Flight, afloatStart } from './flight.ts';
import type { Demonstrator } from '../lesson/index.ts';
import type * as Learning from './learning.ts';
import type { LessonFlight } from './lesson-flight.ts';
import type { PageView } from './page-view.ts';
import type { Shell } from './shell.ts';
import { leftWatch } from './watch-memory.ts';
import type { ShownBeside } from './show-beside.ts';

/** Places that nothing but a wish goes to. */
const WISHED: readonly PageView['place'][] = ['kit', 'bench', 'learn'];

/** Above the ground a diver is let go at least so far, metres. */
const OFF_GROUND_M = 0.5;

/** Who flies in free practice; a saved dive brings no setup. */
export interface FreeDiver {
  readonly rig: Rig;
  readonly id: string;
  readonly setup: Setup | null;
  /** Where he is let go, at rest and level with nothing in the jacket, metres; left out: he begins afloat. */
  readonly letGoM?: number;
}

/** A diver for free practice. */
export const freeDiver = (setup: Setup, id: string): FreeDiver => ({ rig: rigOf(setup), id, setup });

/** Who fetches what lessons need. */
interface Fetcher {
  fetchLearning(): Promise<typeof Learning>;
}

/** The dive in hand, free or of a lesson, and the other one as it was left. */
export class Dives {
  readonly #shell: Shell;
  readonly #later: Fetcher;
  readonly #renewed: () => void;
  #flight: Flight;
  #free: FreeDiver;
  #lesson: LessonFlight | null = null;
  #parked: { readonly flight: Flight; readonly lesson: LessonFlight | null } | null = null;
  /** A moment that is looked back at, standing still; null: the flight's own end. */
  lookedBack: Moment | null = null;
  /** The dive of a second diver beside the one in hand. */
  second: Dive | null = null;
  /** A second diver whom a demonstration brings with its first. */
  shownBeside: ShownBeside | null = null;
  /** How often somebody has gone somewhere. */
  #goings = 0;
  #pair: KeptPair | null | undefined = undefined;
  /** Hears that somebody else dives beside. */
  onPair: () => void = () => undefined;
  /** Whether anything was done in it yet. */
  begun = false;

  /** @param renewed called when another dive was taken in hand */
  constructor(shell: Shell, later: Fetcher, free: FreeDiver, renewed: () => void) {
    this.#shell = shell;
    this.#later = later;
    this.#renewed = renewed;
    this.#free = free;
    this.#flight = new Flight(free.rig, afloatStart(free.rig));
  }

  /** Who was chosen to dive beside whoever flies freely, as he is kept with the dive; null: nobody; undefined: not known yet. */
  get pair(): KeptPair | null | undefined {
    return this.#pair;
  }

  set pair(pair: KeptPair | null | undefined) {
    if (pair === this.#pair) return;
    this.#pair = pair;
    this.onPair();
  }

  get flight(): Flight {
    return this.#flight;
  }

  get lesson(): LessonFlight | null {
    return this.#lesson;
  }

  get free(): FreeDiver {
    return this.#free;
  }

  /**
   * Somebody goes somewhere, and what he goes to may have to be fetched first.
   * @returns says whether he has gone nowhere else meanwhile
   */
  going(): () => boolean {
    const going = ++this.#goings;
    const from = this.#shell.view.place;
    return () => {
      const { place } = this.#shell.view;
      return going === this.#goings && (place === from || !WISHED.includes(place));
    };
  }

  /**
   * Free practice from the surface; or from where the diver is let go, frozen until somebody goes on.
   * @param made a dive of this diver that begins elsewhere
   */
  practise(free: FreeDiver, made?: Flight): void {
    // A step of a demonstration that comes by itself takes nobody anywhere.
    if (!made) this.going();
    this.#free = free;
    const { rig, letGoM } = free;
    const letGo = { depthM: Math.min(letGoM ?? 0, rig.bottomM - OFF_GROUND_M), jacketM3: 0, pitchDeg: 0 };
    const start = letGoM === undefined ? afloatStart(rig) : letGo;
    this.#take(made ?? new Flight(rig, start), null, made ? this.#shell.view.speed : 1);
    this.begun = made !== undefined || letGoM !== undefined;
    this.#shell.show({ place: 'fly', setupId: free.id, frozen: this.begun });
  }

  /** The free dive, frozen as it was left; a new one where there is none. */
  toColumn(): void {
    if (!this.takeUp((lesson) => lesson === null)) this.practise(this.#free);
  }

  /**
   * The first screen: the free dive stands as it was left, or a diver floats.
   * @param anew leaves the free dive: this diver floats
   */
  toStart(anew?: FreeDiver): void {
    if (!anew && this.takeUp((lesson) => lesson === null, 'start')) return;
    this.going();
    this.#free = anew ?? this.#free;
    const { rig, id } = this.#free;
    this.#take(new Flight(rig, afloatStart(rig)), null);
    this.#shell.show({ place: 'start', setupId: id });
  }

  /**
   * Takes up a dive that was left, the one in hand first.
   * @param where the place it is shown in; left out: where it is flown
   * @returns whether there is one that is wanted
   */
  takeUp(wanted: (lesson: LessonFlight | null) => boolean, where?: PageView['place']): boolean {
    if (!wanted(this.#lesson)) {
      const parked = this.#parked;
      if (!parked || !wanted(parked.lesson)) return false;
      this.#take(parked.flight, parked.lesson);
      this.begun = true;
    }
    this.going();
    const place = where ?? (this.#lesson ? 'lesson' : this.begun ? 'fly' : 'start');
    this.#shell.show({ place, frozen: this.begun, moreOpen: false });
    return true;
  }

  /** A saved dive, frozen at its end, to be flown on; with its second diver, where it was saved with one. */
  takeRun(run: Run, endHash: string, second: RunSecond | null): void {
    this.going();
    this.#free = { rig: run.rig, id: '', setup: second?.first ?? null };
    if (second) {
      const { difference, by, own, words = '' } = second;
      this.pair = { difference, by, own, words };
    }
    this.#take(Flight.ofRun(run), null);
    this.begun = true;
    const same = this.#flight.dive.hash() === endHash;
    const trouble = same ? '' : 'This dive does not end as it did when it was saved: the model has changed since.';
    this.#shell.show({ place: 'fly', setupId: '', frozen: true, trouble });
  }

  /** A dive that was kept, free or of a lesson, frozen as it was. */
  bringBack({ flight, lesson, free }: { flight: Flight; lesson: LessonFlight | null; free: FreeDiver }): void {
    if (!lesson) this.#free = free;
    this.#take(flight, lesson);
    this.begun = true;
    this.#shell.show({ place: lesson ? 'lesson' : 'fly', setupId: this.#free.id, frozen: true });
  }

  /** The lessons; who has gone elsewhere before they came stays there. */
  async catalogue(from: PageView['place']): Promise<void> {
    const { MENU } = await this.#later.fetchLearning();
    if (this.#shell.view.place === from) this.#shell.show({ place: 'learn', moreOpen: false, lessons: MENU });
  }

  /**
   * A lesson from its beginning; who has gone elsewhere before it came stays there, and of two the one that was wished for last is flown. Its hints and gauges fade over flights.
   * @param attempt which one it counts as; left out: one more than the last that is kept
   * @param by a simulated diver who flies it: all gauges then, and nothing counts
   * @param resumed one at the bench, or one that a simulated diver flies, goes on where it was left
   * @throws {RangeError} when there is none of that id
   */
  async learn(id: string, attempt?: number, by: Demonstrator | null = null, resumed = false): Promise<void> {
    const stays = this.going();
    const { findTaught, LessonFlight, nextAttempt } = await this.#later.fetchLearning();
    const lesson = await findTaught(id, this.#shell.window);
    if (!stays()) return;
    if (!lesson) throw new RangeError(`there is no lesson ${id}`);
    if ('bench' in lesson) {
      this.#shell.root.dispatchEvent(new WishEvent({ kind: 'bench', ask: { do: 'lesson', id, resumed } }));
      return;
    }
    // A class is asked; whoever watches alone watches.
    const asked = this.#shell.view.projector;
    const how = by ? { by, asked } : { attempt: attempt ?? (await nextAttempt(id)) };
    const found = by && resumed ? leftWatch(this.#shell.window) : null;
    const left = found && found.id === id && found.by === by && found.asked === asked ? found : null;
    const begin = () => LessonFlight.begin(lesson, how);
    const begun = left ? await LessonFlight.watchedAgain(lesson, how, left).catch(begin) : await begin();
    if (!stays()) return;
    this.#take(begun.flight, begun);
    // A flight goes on when somebody lets it, not under the eyes of who has just come back.
    const { prompt, done } = begun.view();
    this.#shell.show({ place: 'lesson', frozen: begun.flight.dive.tick > 0 && !prompt && !done });
  }

  /** The lesson in hand from its beginning: the same flight of it where it was not flown to its end, else the next. */
  learnAgain(): Promise<void> {
    const flown = this.#lesson!;
    return this.learn(flown.lesson.id, flown.view().done ? undefined : flown.attempt, flown.by);
  }

  /** From here on a simulated diver flies the lesson in hand. */
  async handOver(by: Demonstrator): Promise<void> {
    const left = this.#lesson;
    const { LessonFlight } = await this.#later.fetchLearning();
    if (!left || left !== this.#lesson || left.by || left.view().done) return;
    const how = { by, asked: this.#shell.view.projector };
    const given = LessonFlight.resumed(left.lesson, left.flight.dive.run(), left.given, how);
    this.#take(given.flight, given, this.#shell.view.speed);
    this.#shell.show({ place: 'lesson' });
  }

  /** @param speed of its time: a dive is begun, or taken up, at the usual one, however fast the one before it went */
  #take(flight: Flight, lesson: LessonFlight | null, speed = 1): void {
    if ((lesson === null) !== (this.#lesson === null))
      this.#parked = this.begun ? { flight: this.#flight, lesson: this.#lesson } : null;
    this.#flight = flight;
    this.#lesson = lesson;
    this.lookedBack = null;
    this.begun = lesson !== null;
    this.#renewed();
    this.#shell.show({
      flownBy: lesson?.by ?? null,
      frozen: false,
      speed,
      moreOpen: false,
      debrief: null,
      shownAtS: null,
      prompt: null,
      problems: [],
      trouble: '',
    });
  }
}
