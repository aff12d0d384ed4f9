import { rigOf, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, replay, type Dive, type Run } from '../dive/index.ts';
import { fetchSheets, isHeld, type Act, type Wish } from '../panels/index.ts';
import { Stage } from '../stage/index.ts';
import { NEW_CLOCK, betweenTicks, passTime, type Clock } from './clock.ts';
import { SETUPS } from './deck-of.ts';
import { openFile, saveFile } from './files.ts';
import { Flight, afloatStart } from './flight.ts';
import { breathingAs, pressed, released } from './hands.ts';
import { Held } from './held.ts';
import type { KeyCommand } from './keys.ts';
import type * as Learning from './learning.ts';
import type { LessonFlight } from './lesson-flight.ts';
import type { PageView } from './page-view.ts';
import { readySetup } from './setups.ts';
import type { Shell } from './shell.ts';
import { shownFrom } from './shown.ts';
import { toldOf } from './told.ts';

/** How often the panels are told, milliseconds, how often a listener hears, and how long lead stays ready to go. */
const PANELS_MS = 90;
const SPOKEN_MS = 3000;
const ARMED_MS = 2500;
const FIRST_SETUP = 'first-dive';

/** The program while it flies: one flight, the clock that drives it, and what the page shows of it. */
export class Program {
  readonly #shell: Shell;
  readonly #stage: Stage;
  readonly #held = new Held();
  #flight: Flight;
  #free: { rig: Rig; id: string };
  #lesson: LessonFlight | null = null;
  #learning: typeof Learning | null = null;
  #lookedBack: Dive | null = null;
  #clock: Clock = NEW_CLOCK;
  #begun = false;
  #dirty = true;
  #panelsAtMs = -Infinity;
  #spokenAtMs = -Infinity;
  #armedAtMs = -Infinity;

  private constructor(shell: Shell, stage: Stage, rig: Rig) {
    this.#shell = shell;
    this.#stage = stage;
    this.#free = { rig, id: FIRST_SETUP };
    this.#flight = new Flight(rig, afloatStart(rig));
    shell.show({ ready: true, setups: SETUPS, setupId: FIRST_SETUP });
    shell.onWish = (wish) => void this.#grant(wish);
    this.refresh();
  }

  /** The program with its first diver afloat. */
  static async begin(shell: Shell, host: HTMLElement): Promise<Program> {
    const [stage, setup] = await Promise.all([Stage.create(host), readySetup(FIRST_SETUP)]);
    return new Program(shell, stage, rigOf(setup));
  }

  get stage(): Stage {
    return this.#stage;
  }

  /** One frame: passes real time on to the dive, then shows what came of it. */
  frame(realS: number, nowMs: number): void {
    if (this.#runs()) {
      const { clock, ticks } = passTime(this.#clock, realS, this.#shell.view.speed);
      const goOn = () => this.#lesson?.advance() ?? true;
      const ran = this.#flight.run(ticks, () => this.#held.acts, goOn);
      this.#clock = ran < ticks ? { ...clock, waitingS: 0 } : clock;
      this.#dirty = true;
    }
    if (this.#shell.view.deck?.armed && nowMs - this.#armedAtMs > ARMED_MS) this.#dirty = true;
    if (!this.#dirty) return;
    this.#dirty = false;
    const lesson = this.#lesson?.view() ?? null;
    if (lesson && (lesson.prompt || lesson.done)) this.#held.releaseAll();
    if (lesson?.done && this.#shell.view.place === 'lesson')
      this.#shell.show({ place: 'debrief', debrief: this.#lesson!.debrief() });
    this.#draw();
    if (nowMs - this.#panelsAtMs >= PANELS_MS || !this.#runs()) this.#tellPanels(nowMs);
  }

  /** The page changed under the picture: draw and tell again. */
  refresh(): void {
    this.#dirty = true;
  }

  /** A key or button goes down or up. */
  act(act: Act, down: boolean): void {
    const { place, prompt } = this.#shell.view;
    if (place !== 'start' && place !== 'fly' && place !== 'lesson') return;
    if (prompt) return;
    if (!down) this.#held.release(act);
    else if (!isHeld(act)) this.#flight.hands = pressed(this.#flight.hands, act, this.#flight.rig);
    else if (this.#held.press(act)) this.#start();
    this.refresh();
  }

  /** A key that toggles instead of holding. */
  toggle(act: Act): void {
    this.act(act, !this.#held.acts.has(act));
  }

  command(command: KeyCommand): void {
    const { place, prompt } = this.#shell.view;
    if ((place !== 'fly' && place !== 'lesson') || prompt) return;
    if (command === 'release') {
      if (this.#shell.view.deck?.armed) void this.#grant({ kind: 'release', all: false });
      else void this.#grant({ kind: 'arm', armed: true });
    } else if (command === 'freeze' || place === 'fly') void this.#grant({ kind: command });
  }

  /** Nothing is held any more: the page lost sight of the hands. */
  letGo(): void {
    this.#held.releaseAll();
    this.refresh();
  }

  /** Opens what was dropped on the page. */
  async open(file: File): Promise<void> {
    const opened = await openFile(file);
    if (opened.kind === 'problems')
      this.#shell.show({
        moreOpen: false,
        trouble: `${file.name} was not opened. The dive you have is untouched.`,
        problems: opened.problems,
      });
    else if (opened.kind === 'setup') this.#practise(rigOf(opened.setup), '');
    else this.#takeRun(opened.run, opened.endHash);
  }

  /** What lessons need, fetched now unless it is there. */
  async fetchLearning(): Promise<typeof Learning> {
    const [learning] = await Promise.all([import('./learning.ts'), fetchSheets()]);
    return (this.#learning = learning);
  }

  #runs(): boolean {
    const { frozen, moreOpen, prompt, place } = this.#shell.view;
    const flying = place === 'fly' || place === 'lesson';
    return this.#begun && flying && !frozen && !moreOpen && !prompt && !this.#lookedBack;
  }

  #start(): void {
    this.#begun = true;
    if (this.#shell.view.place === 'start') this.#shell.show({ place: 'fly' });
  }

  #draw(): void {
    const { root, window } = this.#shell;
    const { now, whole } = shownFrom({
      shell: this.#shell,
      flight: this.#flight,
      lesson: this.#lesson,
      lookedBack: this.#lookedBack,
      share: betweenTicks(this.#clock),
      begun: this.#begun,
    });
    this.#stage.draw(now);
    if (whole) this.#learning?.drawWholeRun(root, whole, window.devicePixelRatio);
    root.style.setProperty('--diver-y', `${Math.round(this.#stage.depthToY(now.depthM))}px`);
  }

  #tellPanels(nowMs: number): void {
    this.#panelsAtMs = nowMs;
    const speak = nowMs - this.#spokenAtMs >= SPOKEN_MS;
    if (speak) this.#spokenAtMs = nowMs;
    const told = toldOf({
      view: this.#shell.view,
      flight: this.#flight,
      dive: this.#lookedBack ?? this.#flight.dive,
      lesson: this.#lesson?.view() ?? null,
      held: this.#held.acts,
      armed: nowMs - this.#armedAtMs <= ARMED_MS,
      begun: this.#begun,
      speak,
    });
    this.#shell.show(told);
  }

  async #grant(wish: Wish): Promise<void> {
    try {
      await this.#do(wish);
    } catch (problem) {
      const words = problem instanceof Error ? problem.message : String(problem);
      this.#shell.show({ trouble: `That did not work, and nothing was lost: ${words}` });
    }
    this.refresh();
  }

  async #do(wish: Wish): Promise<void> {
    const { view } = this.#shell;
    const flight = this.#flight;
    switch (wish.kind) {
      case 'act':
        return this.act(wish.act, wish.down);
      case 'freeze':
        if (this.#begun && !view.prompt) this.#shell.show({ frozen: !view.frozen });
        return;
      case 'speed':
        return this.#shell.show({ speed: wish.speed });
      case 'restart':
        if (view.place === 'lesson' || view.place === 'debrief') return this.#learn(this.#lesson!.lesson.id);
        return this.#practise(this.#free.rig, this.#free.id);
      case 'more':
        return this.#held.releaseAll();
      case 'back':
        this.#held.releaseAll();
        return flight.back(10);
      case 'setup':
        return this.#practise(rigOf(await readySetup(wish.id)), wish.id);
      case 'place':
        if (wish.place === 'learn') return this.#catalogue(view.place);
        return this.#shell.show({ place: 'fly', projector: wish.place === 'teach' });
      case 'projector':
        return this.#shell.show({ projector: wish.on });
      case 'lesson':
        return this.#learn(wish.id);
      case 'leave':
        if (!this.#lesson) return this.#shell.show({ place: this.#begun ? 'fly' : 'start' });
        return this.#practise(this.#free.rig, this.#free.id);
      case 'answer':
        this.#lesson?.answer(wish.answer);
        this.#begun = true;
        this.#clock = NEW_CLOCK;
        return;
      case 'moment':
        // The same moment once more goes back to the end of the dive.
        if (view.shownAtS === wish.atS) {
          this.#lookedBack = null;
          return this.#shell.show({ shownAtS: null });
        }
        this.#lookedBack = replay(flight.dive.run(), Math.round(wish.atS * TICKS_PER_S));
        return this.#shell.show({ shownAtS: wish.atS });
      case 'arm':
        this.#armedAtMs = wish.armed ? performance.now() : -Infinity;
        return;
      case 'release':
        this.#armedAtMs = -Infinity;
        flight.hands = released(flight.hands, flight.rig, wish.all);
        return this.#start();
      case 'breathing':
        flight.hands = breathingAs(flight.hands, wish.breathing, flight.rig);
        return;
      case 'valve':
        flight.hands = { ...flight.hands, valveHPa: wish.hPa };
        return;
      case 'file':
        return this.open(wish.file);
      case 'save-run':
        return this.#save(flight.dive);
      default:
        return;
    }
  }

  /** Hands the dive to the person as a run file; the writer is fetched now and not before. */
  async #save(dive: Dive): Promise<void> {
    const run = dive.run();
    const endHash = dive.hash();
    const { writeRun } = await import('../dive/file.ts');
    saveFile(this.#shell.root.ownerDocument, writeRun(run, { name: dive.rig.name, endHash }), 'dive.midwater');
  }

  /** Free practice with a diver, from the surface. */
  #practise(rig: Rig, id: string): void {
    this.#free = { rig, id };
    this.#reset(new Flight(rig, afloatStart(rig)), null);
    this.#shell.show({ place: 'fly', setupId: id });
  }

  /** A saved dive, frozen at its end, to be flown on. */
  #takeRun(run: Run, endHash: string): void {
    this.#free = { rig: run.rig, id: '' };
    this.#reset(Flight.ofRun(run), null);
    this.#begun = true;
    const same = this.#flight.dive.hash() === endHash;
    const trouble = same ? '' : 'This dive does not end as it did when it was saved: the model has changed since.';
    this.#shell.show({ place: 'fly', setupId: '', frozen: true, trouble });
  }

  /** The lessons; who has gone elsewhere before they came stays there. */
  async #catalogue(from: PageView['place']): Promise<void> {
    const { LESSONS } = await this.fetchLearning();
    if (this.#shell.view.place === from) this.#shell.show({ place: 'learn', moreOpen: false, lessons: LESSONS });
  }

  async #learn(id: string): Promise<void> {
    const { LESSONS, LessonFlight } = await this.fetchLearning();
    const lesson = LESSONS.find((one) => one.id === id);
    if (!lesson) throw new RangeError(`there is no lesson ${id}`);
    const begun = await LessonFlight.begin(lesson);
    this.#reset(begun.flight, begun);
    this.#shell.show({ place: 'lesson' });
  }

  #reset(flight: Flight, lesson: LessonFlight | null): void {
    this.#flight = flight;
    this.#lesson = lesson;
    this.#lookedBack = null;
    this.#clock = NEW_CLOCK;
    this.#begun = lesson !== null;
    this.#armedAtMs = -Infinity;
    this.#held.releaseAll();
    this.#shell.show({
      frozen: false,
      moreOpen: false,
      debrief: null,
      shownAtS: null,
      prompt: null,
      problems: [],
      trouble: '',
    });
  }
}
