import { TICKS_PER_S, momentAt } from '../dive/index.ts';
import { WishEvent, isHeld, type Act, type LookToggle } from '../panels/index.ts';
import { Stage, type StageView } from '../stage/index.ts';
import { NEW_CLOCK, betweenTicks, passTime, type Clock } from './clock.ts';
import { SETUPS } from './deck-of.ts';
import type { DebriefDesk } from './debrief-desk.ts';
import { Dives, freeDiver, type FreeDiver } from './dives.ts';
import { wishOf } from './commands.ts';
import { Granting } from './granting.ts';
import { pressed } from './hands.ts';
import { Held } from './held.ts';
import type { KeyCommand } from './keys.ts';
import { Later } from './later.ts';
import type { OtherLines } from './other-lines.ts';
import { FIRST_SETUP, readySetup } from './setups.ts';
import { coversWater, timeStands } from './page-view.ts';
import type { Shell } from './shell.ts';
import { shownFrom } from './shown.ts';
import { toldOf } from './told.ts';

/** How often the panels are told, milliseconds, how often a listener hears, and how long lead stays ready to go. */
const PANELS_MS = 90;
const SPOKEN_MS = 3000;
const ARMED_MS = 2500;

/** The program while it flies: one flight, the clock that drives it, and what the page shows of it. */
export class Program {
  readonly #shell: Shell;
  readonly #stage: Stage;
  readonly #held = new Held();
  readonly #dives: Dives;
  /** What is fetched when it is wanted. */
  readonly later: Later;
  /** What is added to the picture before anything looks at it: a second diver. */
  beside = (view: StageView): StageView => view;
  /** Lines beside those that are flown, once there are any. */
  otherLines: OtherLines | null = null;
  /** The debrief that is open. */
  desk: DebriefDesk | null = null;
  /** What is added to the picture: other lines, bookmarks. */
  adorn = (view: StageView): StageView => view;
  /** What is added of predictions, last of all. */
  predicted = (view: StageView): StageView => view;
  readonly #granting = new Granting(this);
  #clock: Clock = NEW_CLOCK;
  #dirty = true;
  #panelsAtMs = -Infinity;
  #spokenAtMs = -Infinity;
  #armedAtMs = -Infinity;

  private constructor(shell: Shell, stage: Stage, free: FreeDiver) {
    this.#shell = shell;
    this.#stage = stage;
    this.later = new Later(shell, () => this.refresh());
    this.#dives = new Dives(shell, this.later, free, () => {
      this.#clock = NEW_CLOCK;
      this.#armedAtMs = -Infinity;
      // Another dive is said at once: what was said of the last one would be heard beside it.
      this.#spokenAtMs = -Infinity;
      this.#held.releaseAll();
    });
    shell.show({ ready: true, setups: SETUPS, setupId: FIRST_SETUP });
    shell.onWish = (wish) => void this.#granting.grant(wish);
    this.refresh();
  }

  /** The program with its first diver afloat. */
  static async begin(shell: Shell, host: HTMLElement): Promise<Program> {
    const [stage, setup] = await Promise.all([Stage.create(host), readySetup(FIRST_SETUP)]);
    return new Program(shell, stage, freeDiver(setup, FIRST_SETUP));
  }

  get shell(): Shell {
    return this.#shell;
  }

  get dives(): Dives {
    return this.#dives;
  }

  get stage(): Stage {
    return this.#stage;
  }

  /** Id of the lesson in hand. */
  get lessonId(): string | null {
    return this.#dives.lesson?.lesson.id ?? null;
  }

  /** One frame: passes real time on to the dive, then shows what came of it. */
  frame(realS: number, nowMs: number): void {
    this.later.presenting?.poll(nowMs);
    if (this.#runs()) {
      const { clock, ticks } = passTime(this.#clock, realS, this.#shell.view.speed);
      this.#clock = this.#run(ticks) < ticks ? { ...clock, waitingS: 0 } : clock;
    }
    if (this.#shell.view.deck?.armed && nowMs - this.#armedAtMs > ARMED_MS) this.#dirty = true;
    if (!this.#dirty || coversWater(this.#shell.view.place)) return;
    this.#dirty = false;
    const lesson = this.#dives.lesson?.view() ?? null;
    if (lesson && (lesson.prompt || lesson.done)) this.#held.releaseAll();
    if (lesson?.done && this.#shell.view.place === 'lesson') this.later.learning!.debriefed(this);
    this.#draw();
    const sinceMs = nowMs - this.#panelsAtMs;
    // A frame in which a look was reckoned leaves the panels to the next one.
    const waits = (this.later.looks?.reckoned ?? false) && sinceMs < 2 * PANELS_MS;
    if ((sinceMs >= PANELS_MS && !waits) || !this.#runs()) this.#tellPanels(nowMs);
  }

  /** A frozen dive goes on by a tenth of a second, with what is held down. */
  step(): void {
    this.freshClock();
    this.#run(TICKS_PER_S / 10);
  }

  /** Looks at an earlier moment of the dive, which stands still meanwhile; null goes back to its end. */
  lookAt(atS: number | null): void {
    this.#held.releaseAll();
    this.#dives.lookedBack = atS === null ? null : momentAt(this.#dives.flight.dive, atS * TICKS_PER_S);
    this.#shell.show({ shownAtS: atS });
    this.refresh();
  }

  /** The page changed under the picture: draw and tell again. */
  refresh(): void {
    this.#dirty = true;
  }

  /** A key or button goes down or up. */
  act(act: Act, down: boolean): void {
    const { place, prompt, looks } = this.#shell.view;
    // What goes up lets go, wherever one has gone meanwhile.
    if (!down) this.#held.release(act);
    // A dive that was left stands still on the first screen: who goes there to fly goes on with it.
    const first = place === 'start' && !this.#dives.begun;
    if (!first && place !== 'fly' && place !== 'lesson') return;
    if (prompt || this.#dives.lookedBack) return;
    // Who flies has met the first caution: from here on it is the line at the foot.
    if (down && !this.#shell.view.settings.cautionRead && !this.#shell.view.projector)
      this.#shell.root.dispatchEvent(new WishEvent({ kind: 'caution-read' }));
    // Who flies has done with the menu.
    if (down && looks?.menuOpen) this.later.looks?.hear({ kind: 'look-menu', open: false });
    this.later.presenting?.acted();
    if (down && !isHeld(act)) this.#dives.flight.hands = pressed(this.#dives.flight.hands, act, this.#dives.flight.rig);
    else if (down) {
      if (this.#shell.view.settings.toggles) this.#held.yield(act);
      if (this.#held.press(act)) this.start();
    }
    this.refresh();
  }

  /** A key that toggles instead of holding. */
  toggle(act: Act): void {
    this.act(act, !this.#held.acts.has(act));
  }

  /** A key that is no act; a digit is another look over the water. */
  command(key: KeyCommand | LookToggle): void {
    const wish = wishOf(key, this.#shell.view);
    if (wish) void this.#granting.grant(wish);
  }

  /** Nothing is held any more: the page lost sight of the hands. */
  letGo(): void {
    this.#held.releaseAll();
    this.refresh();
  }

  /** Something was done: from here on it is a dive. */
  start(): void {
    this.#dives.begun = true;
    if (this.#shell.view.place === 'start') this.#shell.show({ place: 'fly' });
  }

  /** Lead is ready to go for a while; or is not any more. */
  arm(armed: boolean): void {
    this.#armedAtMs = armed ? performance.now() : -Infinity;
  }

  /** Time begins anew: none is made up for. */
  freshClock(): void {
    this.#clock = NEW_CLOCK;
  }

  #runs(): boolean {
    const { view } = this.#shell;
    const flying = view.place === 'fly' || view.place === 'lesson';
    return this.#dives.begun && flying && !timeStands(view) && !this.#dives.lookedBack;
  }

  #run(ticks: number): number {
    const goOn = () => this.#dives.lesson?.advance() ?? this.later.presenting?.goOn() ?? true;
    // Between two questions the page is told late that the second one stands: not a tick passes meanwhile.
    const waits = this.#dives.lesson?.advance() === false;
    const ran = waits ? 0 : this.#dives.flight.run(ticks, () => this.#held.acts, goOn);
    this.later.presenting?.ran();
    this.#dirty = true;
    return ran;
  }

  #draw(): void {
    const { root, window } = this.#shell;
    const { now, whole, asked } = shownFrom({
      shell: this.#shell,
      flight: this.#dives.flight,
      lesson: this.#dives.lesson,
      lookedBack: this.#dives.lookedBack,
      share: betweenTicks(this.#clock),
      begun: this.#dives.begun,
    });
    const both = this.beside(now);
    const drawn = this.predicted(this.adorn(this.later.looks?.onto(both, asked) ?? both));
    this.#stage.draw(drawn);
    this.later.looks?.drawn(this.#stage, drawn);
    if (whole) this.later.learning?.drawWholeRun(root, this.adorn(whole), window.devicePixelRatio);
    root.style.setProperty('--diver-y', `${Math.round(this.#stage.depthToY(now.depthM))}px`);
  }

  #tellPanels(nowMs: number): void {
    this.#panelsAtMs = nowMs;
    const speak = nowMs - this.#spokenAtMs >= SPOKEN_MS;
    if (speak) this.#spokenAtMs = nowMs;
    const presenting = this.later.presenting?.view() ?? null;
    const told = toldOf({
      view: { ...this.#shell.view, presenting },
      flight: this.#dives.flight,
      dive: this.#dives.lookedBack ?? this.#dives.flight.dive,
      lesson: this.#dives.lesson?.view() ?? null,
      name: this.#dives.lesson?.lesson.title ?? '',
      held: this.#held.acts,
      armed: nowMs - this.#armedAtMs <= ARMED_MS,
      begun: this.#dives.begun,
      letGo: this.#dives.free.letGoM !== undefined,
      speak,
    });
    this.#shell.show({ ...told, presenting });
    // What comes next follows from what is asked now.
    const next = this.later.presenting?.view() ?? null;
    if (next !== presenting) this.#shell.show({ presenting: next });
  }
}
