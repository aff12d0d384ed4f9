import type { Act, Wish } from '../panels/index.ts';
import { freeDiver, type Dives } from './dives.ts';
import { goTo } from './go-to.ts';
import { breathingAs, released } from './hands.ts';
import type { Kit } from './kit.ts';
import { kitOf } from './kit-host.ts';
import type { Later } from './later.ts';
import { openOwn, saveOwn } from './own-files.ts';
import { coversWater } from './page-view.ts';
import type { Presented } from './presented.ts';
import { FIRST_SETUP, readySetup } from './setups.ts';
import type { Shell } from './shell.ts';
import { sayingTrouble } from './trouble-words.ts';

/** What granting a wish may do with the program. */
export interface Granted extends Presented {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly later: Later;
  act(act: Act, down: boolean): void;
  lookAt(atS: number | null): void;
  letGo(): void;
  /** Lead is ready to go for a while; or is not any more. */
  arm(armed: boolean): void;
  /** Something was done: from here on it is a dive. */
  start(): void;
  /** Time begins anew: none is made up for. */
  freshClock(): void;
  refresh(): void;
}

/** Decides about wishes: each is granted, or the page says why not and nothing is lost. */
export class Granting {
  readonly #program: Granted;
  #kit: Kit | null = null;
  /** What did not work and is said, until the like of it does. */
  #failed: { readonly kind: Wish['kind']; readonly trouble: string } | null = null;

  constructor(program: Granted) {
    this.#program = program;
  }

  async grant(wish: Wish): Promise<void> {
    const { shell } = this.#program;
    const trouble = await sayingTrouble(shell, this.#do(wish));
    if (trouble) this.#failed = { kind: wish.kind, trouble };
    else if (this.#failed?.kind === wish.kind) {
      if (shell.view.trouble === this.#failed.trouble) shell.show({ trouble: '' });
      this.#failed = null;
    }
    this.#program.refresh();
  }

  async #do(wish: Wish): Promise<void> {
    const program = this.#program;
    const { shell, dives, later } = program;
    const { view } = shell;
    const { flight } = dives;
    switch (wish.kind) {
      case 'act':
        return program.act(wish.act, wish.down);
      case 'freeze':
        if (dives.begun && !view.prompt) shell.show({ frozen: !view.frozen });
        return;
      case 'speed':
        return shell.show({ speed: wish.speed });
      case 'restart':
        if (later.presenting?.restart()) return;
        if (view.place === 'lesson' || view.place === 'debrief') return dives.learnAgain();
        return dives.practise(dives.free);
      case 'more':
        return program.letGo();
      case 'back':
        if (view.shownAtS !== null) return program.lookAt(Math.max(0, view.shownAtS - 10));
        program.letGo();
        return flight.back(10);
      case 'setup':
        return dives.practise(freeDiver(await readySetup(wish.id), wish.id));
      case 'let-go':
        return dives.practise({ ...dives.free, letGoM: wish.depthM });
      case 'place':
        if (wish.place === 'kit' || wish.place === 'learn' || wish.place === 'bench') program.letGo();
        if (wish.place === 'learn') return dives.catalogue(view.place);
        if (wish.place === 'kit') return this.#openKit(wish.id);
        if (wish.place === 'bench') return;
        if (wish.place === 'start') return this.#toStart();
        // Who goes to the water has done with the list of demonstrations.
        if (wish.place === 'fly') void later.presenting?.hear({ do: 'list-away' });
        goTo(wish.place, dives, shell);
        if (wish.place === 'teach') void this.grant({ kind: 'present', ask: { do: 'list' } });
        return;
      case 'present':
        return (await later.fetchPresenting(program)).hear(wish.ask);
      case 'projector':
        return shell.show({ projector: wish.on });
      case 'lesson':
        if (wish.resumed && dives.takeUp((lesson) => lesson?.lesson.id === wish.id && lesson.by === (wish.by ?? null)))
          return;
        return dives.learn(wish.id, undefined, wish.by, wish.resumed);
      case 'all-gauges':
        return dives.lesson ? dives.learn(dives.lesson.lesson.id, 1) : undefined;
      case 'kit':
        return this.#kit?.hear(wish.ask);
      case 'leave':
        if (coversWater(view.place)) dives.takeUp(() => true);
        else dives.toColumn();
        return;
      case 'answer':
        if (!dives.lesson) return later.presenting?.answer(wish.answer);
        dives.lesson.answer(wish.answer);
        dives.begun = true;
        program.freshClock();
        return;
      case 'moment':
        // The same moment once more goes back to the end of the dive.
        return program.lookAt(view.shownAtS === wish.atS ? null : wish.atS);
      case 'look':
      case 'look-choice':
      case 'look-menu':
        return (await later.fetchLooks()).hear(wish);
      case 'arm':
        return program.arm(wish.armed);
      case 'release':
        program.arm(false);
        if (dives.lookedBack) return;
        flight.hands = released(flight.hands, flight.rig, wish.all, flight.dive.state.releasedMask);
        return program.start();
      case 'breathing':
        flight.hands = breathingAs(flight.hands, wish.breathing, flight.rig);
        return;
      case 'valve':
        flight.hands = { ...flight.hands, valveHPa: wish.hPa };
        return;
      case 'file':
        // Where lessons are read, a file is a lesson.
        if (view.place === 'learn') return;
        return openOwn(wish.file, dives, shell);
      case 'save-run':
        return saveOwn(dives, shell.root.ownerDocument);
      default:
        return;
    }
  }

  /** The first screen. The dive of a demonstration is nobody's: after it the first diver floats. */
  async #toStart(): Promise<void> {
    const { shell, dives, later } = this.#program;
    if (shell.view.place === 'start') return shell.show({ moreOpen: false });
    this.#program.letGo();
    const shown = shell.view.presenting?.shown;
    void later.presenting?.hear({ do: 'list-away' });
    dives.toStart(shown ? freeDiver(await readySetup(FIRST_SETUP), FIRST_SETUP) : undefined);
  }

  /** *Kit and water*, fetched now and not before. */
  async #openKit(id?: string): Promise<void> {
    const { shell, dives } = this.#program;
    this.#kit ??= await kitOf(shell, dives);
    await this.#kit.open(id);
  }
}
