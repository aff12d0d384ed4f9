import { CONTROL_NAMES, columnsOf, type Dive } from '../dive/index.ts';
import { besideRecord } from './beside.ts';
import type { Database, Together } from './database.ts';
import { canHold, hold, type LetGo } from './hold.ts';
import {
  MOST_KEPT,
  SHAPE,
  isDiveRecord,
  type DiveRecord,
  type KeptBeside,
  type KeptDive,
  type KeptPair,
  type KeptWhat,
} from './kept.ts';
import { piecesOf } from './read.ts';

/** A piece with this many entries is closed and the next one begun. */
const FULL_PIECE = 200;

/** Where the piece that is being filled begins: its number, the change that it goes on from, and that change's tick. */
interface Place {
  readonly piece: number;
  readonly from: number;
  readonly tick: number;
}

/** One dive on its way into the database: what is new is added, and what was gone back on is written anew. */
export class Keeping {
  readonly #database: Database;
  #id: number | null = null;
  #turn = 0;
  #letGo: LetGo | null = null;
  /** The dive whose beginning is in the database; a dive that goes back in time is another one. */
  #dive: Dive | null = null;
  #place: Place | null = null;
  #ticks = -1;
  #given = 0;
  #beside: KeptBeside<Dive> | null = null;
  #pair: KeptPair | null | undefined = undefined;
  #inHand = true;
  #busy: Promise<void> | null = null;
  #over = false;

  constructor(database: Database) {
    this.#database = database;
  }

  /**
   * Goes on with a kept dive, held for this page. Where another tab holds it, what is flown becomes a dive of its own; where nobody
   * can say, it does as soon as the other one is seen to write.
   * @param inHand whether the list knows already that it is flown
   * @returns whether another tab holds it
   */
  async goOn(kept: KeptDive, inHand: boolean): Promise<boolean> {
    if (this.#id !== kept.id) this.#forget();
    if (!(await this.#hold(kept.id)) && canHold()) {
      this.#forget();
      return true;
    }
    this.#id = kept.id;
    this.#turn = kept.turn;
    this.#dive = null;
    this.#place = null;
    this.#ticks = kept.run.ticks;
    this.#given = kept.given.length;
    this.#pair = kept.pair === 'damaged' ? undefined : kept.pair;
    this.#inHand = inHand;
    return false;
  }

  /** Its number in the list; null as long as nothing of it is kept. */
  get id(): number | null {
    return this.#id;
  }

  /** Everything was erased: this dive is kept no more. */
  get over(): boolean {
    return this.#over;
  }

  /** Whether there is anything of a dive that is not kept yet; what stands or dives beside it counts as new when it is another object. */
  isBehind(dive: Dive, what: KeptWhat, beside: KeptBeside<Dive> | null = null): boolean {
    if (this.#over) return false;
    const paired = what.pair !== undefined && what.pair !== this.#pair;
    const another = (this.#dive !== null && this.#dive !== dive) || beside !== this.#beside || paired;
    return another || !this.#inHand || sinceStart(dive) !== this.#ticks || what.given.length !== this.#given;
  }

  /**
   * Keeps the dive as it is now; does nothing while the last time is not done.
   * @throws {StoreProblem} when it was not kept; the next time all that is missing is tried again
   */
  async keep(dive: Dive, what: KeptWhat, beside: KeptBeside<Dive> | null = null): Promise<void> {
    if (this.#busy || this.#over) return;
    this.#busy = this.#keep(dive, what, beside);
    try {
      await this.#busy;
    } finally {
      this.#busy = null;
    }
  }

  /** Keeps the last of a dive that was just left, once what is being written is written. @throws {StoreProblem} */
  async keepLast(dive: Dive, what: KeptWhat, beside: KeptBeside<Dive> | null): Promise<void> {
    await this.#busy?.catch(() => undefined);
    if (this.isBehind(dive, what, beside)) await this.keep(dive, what, beside);
  }

  /**
   * It is no longer flown: kept on in the list, or not at all where it was too short to be looked for. Whoever opens it may have it, this
   * page too, which has forgotten by then that it was its own.
   */
  async leave(forGood: boolean): Promise<void> {
    await this.#busy?.catch(() => undefined);
    this.#unhold();
    const id = this.#id;
    this.#inHand = false;
    if (id === null || this.#over) return;
    await this.#database.together(async (all) => {
      const line = await this.#mine(all);
      if (line && forGood) return removeFrom(all, id);
      if (line) await all.objectStore('dives').put({ ...line, inHand: false });
    });
    if (forGood) this.#forget();
  }

  /** It was erased with everything else. */
  end(): void {
    this.#over = true;
    this.#forget();
  }

  async #keep(dive: Dive, what: KeptWhat, beside: KeptBeside<Dive> | null): Promise<void> {
    // Read before anything is waited for: the dive goes on meanwhile.
    const ticks = sinceStart(dive);
    const goesOn = this.#dive === dive ? this.#place : null;
    const stretch = goesOn
      ? stretchFrom(goesOn, dive)
      : stretchFrom({ piece: 0, from: 0, tick: dive.tick - ticks }, dive);
    const { rig, start, locked } = dive.run();
    const endHash = dive.hash();
    const controls = CONTROL_NAMES.map((name) => dive.changes[0]!.controls[name]);
    const { setup, letGoM, ...told } = what;
    const pair = what.pair === undefined ? this.#pair : what.pair;

    const kept = await this.#database.together(async (all) => {
      const dives = all.objectStore('dives');
      const mine = await this.#mine(all);
      const now = Date.now();
      const line = { ...told, pair, shape: SHAPE, inHand: true, ticks, endHash, savedMs: now };
      const begunMs = mine?.begunMs ?? now;
      const turn = this.#turn + 1;
      // The database numbers a new one itself.
      const id = mine?.id ?? (await dives.add({ ...line, begunMs, turn } as DiveRecord));
      if (mine) await dives.put({ ...line, id, begunMs, turn });
      if (!mine || !goesOn) {
        await all.objectStore('pieces').delete(piecesOf(id));
        await all.objectStore('starts').put({ id, rig, start, locked, controls, setup, letGoM });
      }
      // Somebody removed what this piece would have gone on from.
      const whole = !mine && goesOn ? stretchFrom({ piece: 0, from: 0, tick: start.tick }, dive, ticks) : stretch;
      await all.objectStore('pieces').put({ id, ...whole.piece });
      if (!mine || beside !== this.#beside) {
        if (beside) await all.objectStore('beside').put(besideRecord(id, beside));
        else await all.objectStore('beside').delete(id);
      }
      if (!mine) await removeOldest(all, id);
      return { id, next: whole.next, isNew: !mine };
    });

    this.#turn++;
    this.#dive = dive;
    this.#ticks = ticks;
    this.#given = what.given.length;
    this.#pair = pair;
    this.#beside = beside;
    this.#inHand = true;
    // What was done on the very first tick may still be done otherwise on it.
    this.#place = ticks === 0 ? null : kept.next;
    if (kept.isNew) this.#unhold();
    this.#id = kept.id;
    await this.#hold(kept.id);
  }

  /** Holds a dive unless it is held already. @returns whether it is held now */
  async #hold(id: number): Promise<boolean> {
    const letGo = this.#letGo ?? (await hold(id));
    if (this.#over) letGo?.();
    else this.#letGo = letGo;
    return this.#letGo !== null;
  }

  #unhold(): void {
    this.#letGo?.();
    this.#letGo = null;
  }

  /** The line of this dive, as long as nobody else has written or removed it. */
  async #mine(all: Together): Promise<DiveRecord | null> {
    const line = this.#id === null ? null : await all.objectStore('dives').get(this.#id);
    return isDiveRecord(line) && line.turn === this.#turn ? line : null;
  }

  #forget(): void {
    this.#unhold();
    this.#id = null;
    this.#dive = null;
    this.#place = null;
    this.#beside = null;
    this.#pair = undefined;
    this.#ticks = -1;
  }
}

/** What a dive did from a place on up to a tick, in columns. What it does on its last tick is not settled yet. */
function stretchFrom(place: Place, dive: Dive, ticks = sinceStart(dive)) {
  const end = dive.recording.startTick + ticks;
  const settled = dive.changes.filter(({ tick }, i) => i >= place.from && (i === 0 || tick < end));
  const columns = columnsOf({ start: { tick: place.tick }, changes: settled });
  const sum = columns.ticks.reduce((so, one) => so + one, 0);
  const isFull = columns.ticks.length >= FULL_PIECE;
  const next: Place = isFull
    ? { piece: place.piece + 1, from: place.from + settled.length - 1, tick: place.tick + sum }
    : place;
  return { piece: { piece: place.piece, ...columns }, next };
}

const sinceStart = (dive: Dive): number => dive.tick - dive.recording.startTick;

/** Takes a dive out of all stores. */
export async function removeFrom(all: Together, id: number): Promise<void> {
  await all.objectStore('dives').delete(id);
  await all.objectStore('starts').delete(id);
  await all.objectStore('pieces').delete(piecesOf(id));
  await all.objectStore('beside').delete(id);
}

/** Makes room: of more than may be kept the oldest go, never the one in hand. */
async function removeOldest(all: Together, inHand: number): Promise<void> {
  const ids = await all.objectStore('dives').getAllKeys();
  const lines = await Promise.all(ids.map((id) => all.objectStore('dives').get(id)));
  const aged = ids
    .map((id, i) => ({ id, savedMs: isDiveRecord(lines[i]) ? lines[i].savedMs : 0 }))
    .filter(({ id }) => id !== inHand)
    .sort((a, b) => a.savedMs - b.savedMs || a.id - b.id);
  for (const { id } of aged.slice(0, Math.max(0, ids.length - MOST_KEPT))) await removeFrom(all, id);
}
