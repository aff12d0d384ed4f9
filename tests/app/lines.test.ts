import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { diveAt, replay, type Dive } from '../../src/dive/index.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { Lines, endWords } from '../../src/app/lines.ts';
import type { Act } from '../../src/panels/index.ts';

const rig = rigOf(firstDive as Setup);

function fly(flight: Flight, seconds: number, ...acts: Act[]): void {
  flight.run(
    seconds * 120,
    () => new Set(acts),
    () => true,
  );
}

function flown(): Flight {
  const flight = new Flight(rig, afloatStart(rig));
  fly(flight, 3, 'vent', 'out');
  fly(flight, 12);
  return flight;
}

/** Takes over at a moment: the line that was flown is left there. */
function takeOver(flight: Flight, lines: Lines, atS: number): Dive {
  const old = flight.dive;
  const dive = diveAt(old, atS * 120);
  lines.leave(old, dive.tick);
  flight.take(dive);
  return old;
}

describe('Lines', () => {
  test('leave(): the line that was flown stays whole beside the new one, which goes another way from the knot on', () => {
    const flight = flown();
    const lines = new Lines();
    const hash = flight.dive.hash();
    const old = takeOver(flight, lines, 5);
    fly(flight, 6, 'add');
    const [line] = lines.others;
    expect(line).toMatchObject({ letter: 'A', knotTick: 600, shown: true, name: endWords(old) });
    expect(line!.dive.hash()).toBe(hash);
    expect(replay(line!.dive.run()).hash()).toBe(hash);
    const rowAt = (dive: Dive, s: number) => dive.recording.row(s * 10);
    for (let s = 0; s <= 5; s++) expect(rowAt(flight.dive, s)).toEqual(rowAt(old, s));
    expect(rowAt(flight.dive, 8).depthM).toBeLessThan(rowAt(old, 8).depthM - 0.1);
  });

  test('leave(): knots of lines left later on than the new knot come back to it; a fifth takes the letter of the first', () => {
    const flight = flown();
    const lines = new Lines();
    for (const atS of [10, 6, 8, 7]) {
      takeOver(flight, lines, atS);
      fly(flight, 10);
    }
    expect(lines.others.map(({ letter, knotTick }) => [letter, knotTick / 120])).toEqual([
      ['A', 6],
      ['B', 6],
      ['C', 7],
      ['D', 7],
    ]);
    const first = lines.others[0]!;
    const old = flight.dive;
    const taken = diveAt(old, 9 * 120);
    expect(lines.leave(old, taken.tick)).toEqual(first);
    expect(lines.others).toHaveLength(4);
    expect(lines.others[0]!.dive).toBe(old);
  });

  test('switchTo(): that line is flown on from its end, and the other waits at the same knot; names go with their dives', () => {
    const flight = flown();
    const lines = new Lines();
    const old = takeOver(flight, lines, 5);
    lines.call('A', 'did nothing');
    fly(flight, 4, 'add');
    const other = flight.dive;
    flight.take(lines.switchTo('A', other));
    expect(flight.dive).toBe(old);
    expect(lines.name).toBe('did nothing');
    expect(lines.others).toHaveLength(1);
    expect(lines.others[0]).toMatchObject({ letter: 'A', knotTick: 600, name: endWords(other) });
    flight.take(lines.switchTo('A', flight.dive));
    expect(flight.dive).toBe(other);
    expect(lines.others[0]!.name).toBe('did nothing');
  });

  test('leave(): a line that was left by switching counts as left then', () => {
    const flight = flown();
    const lines = new Lines();
    for (const atS of [10, 9, 8, 7]) {
      takeOver(flight, lines, atS);
      fly(flight, 5);
    }
    flight.take(lines.switchTo('A', flight.dive));
    expect(lines.leave(flight.dive, 6 * 120)?.letter).toBe('B');
  });

  test('changed(): who goes back before a knot moves it to where the lines part now; another diver has no line of this one', () => {
    const flight = flown();
    const lines = new Lines();
    takeOver(flight, lines, 8);
    fly(flight, 4, 'add');
    flight.take(diveAt(flight.dive, 4 * 120));
    fly(flight, 3, 'in');
    lines.changed(flight.dive);
    expect(lines.others[0]!.knotTick).toBe(480);
    lines.changed(new Flight(rig, { depthM: 5 }).dive);
    expect(lines.others).toEqual([]);
  });

  test('marks: numbered as they come, in order of time, away by a second press, nine at most, and gone with their line', () => {
    const lines = new Lines();
    for (const s of [3, 1, 2]) expect(lines.mark(s * 120)).toBe(true);
    expect(lines.marks.map(({ number }) => number)).toEqual([2, 3, 1]);
    lines.mark(120);
    expect(lines.marks.map(({ number }) => number)).toEqual([3, 1]);
    for (let s = 4; s < 11; s++) expect(lines.mark(s * 120)).toBe(true);
    expect(lines.mark(1440)).toBe(false);
    lines.leave(flown().dive, 300);
    expect(lines.marks.map(({ tick }) => tick)).toEqual([240]);
  });

  test('callMark(): a bookmark keeps its name on its line, loses it by an empty one, and goes by its number', () => {
    const flight = flown();
    const lines = new Lines();
    for (const atS of [2, 9]) lines.mark(atS * 120);
    lines.callMark(2, ' runs away ');
    takeOver(flight, lines, 5);
    flight.take(lines.switchTo('A', flight.dive));
    expect(lines.marks.map(({ name }) => name)).toEqual(['', 'runs away']);
    lines.callMark(2, ' ');
    expect(lines.marks[1]!.name).toBe('');
    lines.removeMark(1);
    expect(lines.marks.map(({ number }) => number)).toEqual([2]);
    expect(() => lines.callMark(1, 'gone')).toThrow(RangeError);
  });

  test('switchTo(): bookmarks beyond the knot go with their line and come back with it, each under its own number', () => {
    const flight = flown();
    const lines = new Lines();
    for (const atS of [2, 9, 12]) lines.mark(atS * 120);
    takeOver(flight, lines, 5);
    expect(lines.marks.map(({ number, tick }) => [number, tick / 120])).toEqual([[1, 2]]);
    fly(flight, 6);
    lines.mark(8 * 120);
    flight.take(lines.switchTo('A', flight.dive));
    expect(lines.marks.map(({ number, tick }) => [number, tick / 120])).toEqual([
      [1, 2],
      [2, 9],
      [3, 12],
    ]);
    flight.take(lines.switchTo('A', flight.dive));
    expect(lines.marks.map(({ number, tick }) => [number, tick / 120])).toEqual([
      [1, 2],
      [4, 8],
    ]);
  });

  test('a letter that is not there is said', () => {
    expect(() => new Lines().remove('A')).toThrow(RangeError);
  });
});
