import { WishEvent, type LookToggle, type Wish } from '../panels/index.ts';
import { bringHandsBack, keepClass } from './class-keeps.ts';
import { DEMONSTRATIONS } from './demonstrations.ts';
import type { Presented } from './presented.ts';
import { readySetup } from './setups.ts';
import { keepShow, leftShow, type LeftShow } from './show-memory.ts';
import { Showing } from './showing.ts';
import type { Tally } from './tally.ts';

/** The demonstration in hand: begun, gone on with after a reload, put on the page step by step, and kept where it is. */
export class ShowInHand {
  readonly #program: Presented;
  readonly #tally: Tally;
  readonly #telling: () => void;
  #showing: Showing | null = null;
  #looked: LookToggle | null = null;
  #kept = '';

  /**
   * @param tally the hands of a class, kept with the place
   * @param telling called when a step was come to
   */
  constructor(program: Presented, tally: Tally, telling: () => void) {
    this.#program = program;
    this.#tally = tally;
    this.#telling = telling;
    bringHandsBack(program.shell.window, tally);
  }

  /** The demonstration, as long as its dive is the one in hand. */
  get live(): Showing | null {
    const { dives } = this.#program;
    return this.#showing && dives.lesson === null && dives.flight === this.#showing.flight ? this.#showing : null;
  }

  /**
   * Begins a demonstration.
   * @param resumed goes on where it was left in this tab, if it was
   * @throws {RangeError} when there is none of that id
   */
  async begin(id: string, resumed = false): Promise<void> {
    const demonstration = DEMONSTRATIONS.find((one) => one.id === id);
    if (!demonstration) throw new RangeError(`there is no demonstration ${id}`);
    const { shell } = this.#program;
    const stays = this.#program.dives.going();
    const left = resumed ? leftShow(shell.window, id) : null;
    const begin = (from: LeftShow | null) => Showing.begin(demonstration, readySetup, from?.place);
    // One that cannot be gone on with, as when the model changed since, begins anew.
    const showing = await begin(left).catch(() => begin(null));
    // Who has gone elsewhere meanwhile stays there.
    if (!stays()) return;
    this.#showing = showing;
    shell.show({ projector: true, speed: 1 });
    this.entered(showing);
    this.#tally.asked(showing.prompt);
    if (left) {
      this.#tally.counts = left.counts;
      // A run goes on when somebody lets it, not under the eyes of who has just come back.
      shell.show({ frozen: true });
    }
  }

  /** Keeps where the class is, in a demonstration or in a lesson that it watches: a reload, or a link, goes on there. */
  keep(): void {
    keepClass(this.#program, this.#tally);
    const showing = this.live;
    if (!showing) return;
    const { counts } = this.#tally;
    const now = [showing.demonstration.id, showing.entered, showing.flight.dive.tick, counts].join();
    if (now === this.#kept) return;
    this.#kept = now;
    keepShow(this.#program.shell.window, { place: showing.place, counts });
  }

  /** A step was come to: its dive in hand, time standing unless it runs, its look over the water and no other. */
  entered(showing: Showing): void {
    const { dives, shell } = this.#program;
    const { step, flight } = showing;
    if (dives.flight !== flight) {
      // The address says at once what is shown, not first that it is any dive.
      shell.show({
        presenting: shell.view.presenting && { ...shell.view.presenting, shown: showing.demonstration.id },
      });
      dives.practise({ rig: flight.rig, id: '', setup: null }, flight);
    }
    dives.shownBeside = showing.beside;
    // Whoever draws two divers is fetched with the first pair.
    if (dives.shownBeside) this.#wish({ kind: 'pair', ask: { do: 'shown' } });
    this.#program.letGo();
    shell.show({ frozen: !showing.runs, prompt: showing.prompt });
    const look = 'look' in step ? (step.look ?? null) : null;
    if (look !== this.#looked && (look === 'hilltop' || look === 'stops' || look === null))
      this.#wish({ kind: 'look-choice', choice: { look } });
    this.#looked = look;
    this.#telling();
  }

  #wish(wish: Wish): void {
    this.#program.shell.root.dispatchEvent(new WishEvent(wish));
  }
}
