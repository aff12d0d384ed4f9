import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { diveAt, type Dive, type Run } from '../../src/dive/index.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { OtherLines } from '../../src/app/other-lines.ts';
import type { KeptBeside } from '../../src/store/index.ts';

const rig = rigOf(firstDive as Setup);

function flown(seconds: number): Flight {
  const flight = new Flight(rig, afloatStart(rig));
  flight.run(
    seconds * 120,
    () => new Set(['vent', 'out']),
    () => true,
  );
  return flight;
}

/** What is kept, as it is read again: each dive as its run. */
const read = (kept: KeptBeside<Dive>): KeptBeside<Run> => ({
  ...kept,
  others: kept.others.map((line) => ({ ...line, dive: line.dive.run() })),
  ghost: kept.ghost && { ...kept.ghost, dive: kept.ghost.dive.run() },
});

describe('OtherLines', () => {
  test('toKeep(): nothing where there is nothing, the same object until something changed', () => {
    const lines = new OtherLines();
    const flight = flown(6);
    expect(lines.toKeep(flight)).toBeNull();
    lines.of(flight).mark(240);
    const kept = lines.toKeep(flight);
    expect(kept).toMatchObject({ marks: [{ number: 1, tick: 240 }], others: [], ghost: null });
    expect(lines.toKeep(flight)).toBe(kept);
    lines.ghost = { dive: flown(2).dive, name: 'before', shown: true };
    expect(lines.toKeep(flight)).toMatchObject({ marks: kept!.marks, ghost: { name: 'before' } });
    lines.ghost = null;
    lines.of(flight).mark(240);
    expect(lines.toKeep(flight)).toBeNull();
  });

  test('bringBack(): lines, bookmarks and ghost of what was kept, and a line can be taken up again', () => {
    const before = new OtherLines();
    const flight = flown(10);
    const old = flight.dive;
    before.of(flight).mark(120);
    const dive = diveAt(old, 480);
    before.of(flight).leave(old, dive.tick);
    flight.take(dive);
    before.ghost = { dive: flown(3).dive, name: 'ghost', shown: false };
    const kept = before.toKeep(flight)!;

    const again = Flight.ofRun(flight.dive.run());
    const lines = new OtherLines();
    lines.bringBack(again, read(kept));
    expect(lines.of(again).marks).toEqual([{ number: 1, tick: 120, name: '' }]);
    expect(lines.of(again).others).toMatchObject([{ letter: 'A', knotTick: 480, shown: true }]);
    expect(lines.ghost!.dive.hash()).toBe(before.ghost.dive.hash());
    expect(lines.of(again).switchTo('A', again.dive).hash()).toBe(old.hash());
  });

  test('bringBack(): of too many lines the one that was left longest ago goes, and bookmarks of another line are still its own', () => {
    const before = new OtherLines();
    const flight = flown(12);
    const leave = (of: OtherLines, flown: Flight, atS: number) => {
      const dive = diveAt(flown.dive, atS * 120);
      const gone = of.of(flown).leave(flown.dive, dive.tick);
      dive.steer({ ...dive.controls, jacketAdd: atS / 12 });
      dive.advance(120 * 3);
      flown.take(dive);
      return gone;
    };
    before.of(flight).mark(120 * 11);
    for (const atS of [6, 5, 4, 3, 2]) leave(before, flight, atS);
    // A went for the fifth, which has its letter now: B is the oldest.
    const again = Flight.ofRun(flight.dive.run());
    const lines = new OtherLines();
    lines.bringBack(again, read(before.toKeep(flight)!));
    expect(leave(lines, again, 1)?.letter).toBe('B');
  });

  test('bringBack(): bookmarks beyond the knot come back with their line', () => {
    const before = new OtherLines();
    const flight = flown(10);
    before.of(flight).mark(120 * 8);
    const dive = diveAt(flight.dive, 120 * 4);
    before.of(flight).leave(flight.dive, dive.tick);
    flight.take(dive);
    const again = Flight.ofRun(flight.dive.run());
    const lines = new OtherLines();
    lines.bringBack(again, read(before.toKeep(flight)!));
    expect(lines.of(again).marks).toEqual([]);
    again.take(lines.of(again).switchTo('A', again.dive));
    expect(lines.of(again).marks).toEqual([{ number: 1, tick: 960, name: '' }]);
  });

  test('bringBack(): a ghost that somebody chose meanwhile stays', () => {
    const lines = new OtherLines();
    const mine = { dive: flown(1).dive, name: 'mine', shown: true };
    lines.ghost = mine;
    const ghost = { dive: flown(2).dive.run(), name: 'kept', shown: true };
    lines.bringBack(flown(4), { name: '', marks: [], others: [], ghost });
    expect(lines.ghost).toBe(mine);
  });
});
