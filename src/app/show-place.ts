import {
  CONTROL_NAMES,
  changesOf,
  columnsOf,
  quantised,
  replay,
  type ChangeColumns,
  type Controls,
  type Dive,
} from '../dive/index.ts';
import type { Rig } from '../diver/index.ts';
import type { AskStep, BeginStep, Demonstration } from './demonstration.ts';
import { Flight } from './flight.ts';
import { shownStart } from './show-start.ts';

/** Where a demonstration was when a step was entered. */
export interface Entered {
  readonly step: number;
  readonly flight: Flight;
  readonly tick: number;
  readonly begun: BeginStep;
  readonly memory: Memory;
  /** The dive as it was before the step went back in it; null where it did not. */
  readonly left: Dive | null;
}

/** What a demonstration keeps of its runs: words by name, and the question that waits for its truth. */
export interface Memory {
  readonly words: ReadonlyMap<string, string>;
  readonly asked: { readonly step: AskStep; readonly row: number } | null;
  /** What a class said to the question before, as long as its dive goes on. */
  readonly said: ClassSaid | null;
}

/** An answer that was locked: at which step and tick, and how many hands were counted for it; 0 where nobody counted. */
export interface ClassSaid {
  readonly step: number;
  readonly tick: number;
  readonly id: string;
  readonly hands: number;
}

/** A longer demonstration than this was never shown, ticks: an hour. */
const MOST_TICKS = 60 * 60 * 120;

/** Where a demonstration is, as plain data that can be stored: steps by their number, dives by what was done in them. */
export interface ShowPlace {
  readonly id: string;
  readonly dives: readonly KeptShow[];
  readonly trail: readonly KeptEntry[];
  readonly memory: KeptMemory;
}

interface KeptShow {
  readonly begin: number;
  /** First controls, in the order of their names. */
  readonly first: readonly number[];
  readonly changes: ChangeColumns;
  readonly ticks: number;
  readonly endHash: string;
}

interface KeptEntry {
  readonly step: number;
  readonly dive: number;
  readonly tick: number;
  readonly memory: KeptMemory;
  readonly left?: KeptShow;
}

interface KeptMemory {
  readonly words: readonly (readonly [name: string, words: string])[];
  readonly asked: { readonly step: number; readonly row: number } | null;
  readonly said?: ClassSaid | null;
}

/** The place of a demonstration from its trail. */
export function placeOf({ id, steps }: Demonstration, trail: readonly Entered[], memory: Memory): ShowPlace {
  const flights = [...new Set(trail.map(({ flight }) => flight))];
  const begun = new Map(trail.map((entered) => [entered.flight, entered.begun]));
  const kept = (one: Memory): KeptMemory => ({
    ...one,
    words: [...one.words],
    asked: one.asked && { step: steps.indexOf(one.asked.step), row: one.asked.row },
  });
  return {
    id,
    dives: flights.map((flight) => keptShow(flight.dive, steps.indexOf(begun.get(flight)!))),
    trail: trail.map(({ step, flight, tick, memory: then, begun: by, left }) => ({
      step,
      dive: flights.indexOf(flight),
      tick,
      memory: kept(then),
      ...(left ? { left: keptShow(left, steps.indexOf(by)) } : {}),
    })),
    memory: kept(memory),
  };
}

function keptShow(dive: Dive, begin: number): KeptShow {
  const run = dive.run();
  const first = CONTROL_NAMES.map((name) => run.changes[0]!.controls[name]);
  return { begin, first, changes: columnsOf(run), ticks: run.ticks, endHash: dive.hash() };
}

/**
 * The trail and memory that a place stands for, its dives dived again.
 * @param found as it was stored; anything may have become of it
 * @throws {Error} where it is not of this demonstration, or does not come to the very bits that were stored
 */
export function trailOf(
  { id, steps }: Demonstration,
  rigs: ReadonlyMap<BeginStep, Rig>,
  found: ShowPlace,
): { readonly trail: Entered[]; readonly memory: Memory } {
  if (found.id !== id || found.trail.length === 0) throw new RangeError(`no place in ${id}`);
  const dives = found.dives.map((one) => {
    const begun = steps[one.begin];
    if (begun?.kind !== 'begin') throw new RangeError(`step ${one.begin} of ${id} begins nothing`);
    return { begun, flight: flownAgain(rigs.get(begun)!, begun, one) };
  });
  const memoryOf = ({ words, asked, said = null }: KeptMemory): Memory => {
    const step = asked && steps[asked.step];
    if (step && step.kind !== 'ask') throw new RangeError(`step ${asked.step} of ${id} asks nothing`);
    return { words: new Map(words), asked: asked && step ? { step, row: asked.row } : null, said };
  };
  const trail = found.trail.map(({ step, dive, tick, memory, left }) => {
    const of = dives[dive];
    if (!steps[step] || !of) throw new RangeError(`${id} has no step ${step}`);
    const before = left ? flownAgain(rigs.get(of.begun)!, of.begun, left).dive : null;
    return { step, ...of, tick, memory: memoryOf(memory), left: before };
  });
  return { trail, memory: memoryOf(found.memory) };
}

function flownAgain(rig: Rig, begun: BeginStep, { first, changes, ticks, endHash }: KeptShow): Flight {
  if (!(ticks >= 0 && ticks <= MOST_TICKS)) throw new RangeError(`a dive of ${ticks} ticks`);
  const flight = new Flight(rig, shownStart(rig, begun));
  const run = flight.dive.run();
  const named = Object.fromEntries(CONTROL_NAMES.map((name, i) => [name, first[i]!])) as unknown as Controls;
  const read = changesOf(changes, quantised(named), run.start.tick, ticks);
  if ('fault' in read) throw new RangeError(read.fault.found);
  flight.take(replay({ ...run, changes: read.changes, ticks }));
  if (flight.dive.hash() !== endHash) throw new RangeError('the dive ends otherwise than it did');
  return flight;
}
