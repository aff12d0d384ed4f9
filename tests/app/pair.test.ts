import { describe, expect, test } from 'vitest';
import drysuit from '../../src/diver/setups/drysuit-membrane.yaml';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import temperate from '../../src/diver/setups/temperate-sea.yaml';
import { midBreathM3, netForceN, rigOf, type Rig, type Setup } from '../../src/diver/index.ts';
import { TICKS_PER_S, diveAt, replay } from '../../src/dive/index.ts';
import { withMoreLead } from '../../src/insight/index.ts';
import { pilotOf } from '../../src/pilot/index.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { PressCount, sideOf, cylindersMol } from '../../src/app/pair-compare.ts';
import { differencesFor, otherOf } from '../../src/app/pair-difference.ts';
import { Second, type SecondBy } from '../../src/app/pair-second.ts';
import { startBeside } from '../../src/app/pair-start.ts';
import type { Act } from '../../src/panels/index.ts';
import { levelWith } from '../../src/app/pair-hands.ts';

const setup = firstDive as Setup;
const rig = rigOf(setup);

/** Vents and breathes out for six seconds, kicks down, adds twice, breathes in. */
function acts(s: number): Set<Act> {
  const held = new Set<Act>();
  if (s < 6) held.add('vent').add('out');
  if (s > 7 && s < 9.4) held.add('kick-down');
  if ((s > 12 && s < 13) || (s > 15 && s < 15.4)) held.add('add');
  if (s > 17 && s < 20) held.add('in');
  return held;
}

/** Flies on in frames of so many ticks, the second one following each; at last a piece of lead is let go. */
function fly(flight: Flight, seconds: number, second?: Second, frame = 7): void {
  const end = flight.dive.tick + seconds * TICKS_PER_S;
  flight.meddle = (wanted, { tick }) => ({ ...wanted, releaseMask: tick > 21 * TICKS_PER_S ? 1 : 0 });
  while (flight.dive.tick < end) {
    const held = () => acts(flight.dive.tick / TICKS_PER_S);
    flight.run(Math.min(frame, end - flight.dive.tick), held, () => true);
    second?.follow(flight.dive);
  }
}

const begun = (of: Rig = rig) => new Flight(of, afloatStart(of));
const beside = (own: Rig, by: SecondBy = 'hands') =>
  new Second({ rig: own, by, begin: (first) => startBeside(first, own) });

describe('Second', () => {
  test('by the same hands is the first one to the bit where nothing differs', () => {
    const flight = begun();
    const second = beside(rigOf(setup));
    fly(flight, 26, second);
    expect(flight.dive.changes.length).toBeGreaterThan(20);
    expect(second.dive.hash()).toBe(flight.dive.hash());
    expect(second.dive.run().changes).toEqual(flight.dive.run().changes);
  });

  test.each<SecondBy>(['hands', 'steady', 'learner', 'latecomer', 'idler'])(
    'by %s he has the same ticks in every partition, and his run alone ends on the same bits',
    (by) => {
      const heavy = withMoreLead(rig, 2);
      const [flight, other] = [begun(), begun()];
      const [second, late] = [beside(heavy, by), beside(heavy, by)];
      fly(flight, 26, second, 5);
      fly(other, 26, undefined, 41);
      late.follow(other.dive);
      expect(second.dive.tick).toBe(flight.dive.tick);
      expect(second.dive.recording.rows).toBe(flight.dive.recording.rows);
      expect(second.dive.recording.startTick).toBe(flight.dive.recording.startTick);
      expect(late.dive.hash()).toBe(second.dive.hash());
      expect(replay(second.dive.run()).hash()).toBe(second.dive.hash());
      expect(replay(flight.dive.run()).hash()).toBe(flight.dive.hash());
    },
  );

  test.each<SecondBy>(['hands', 'able'])(
    'by %s he goes back with the first one and on again to the same bits',
    (by) => {
      const flight = begun();
      const second = beside(withMoreLead(rig, 2), by);
      fly(flight, 26, second);
      const [run, was] = [flight.dive.run(), second.dive];
      flight.back(10);
      second.follow(flight.dive);
      expect(second.dive.tick).toBe(flight.dive.tick);
      expect(second.dive.hash()).toBe(diveAt(was, flight.dive.tick).hash());
      const again = replay(run);
      second.follow(again);
      expect(second.dive.hash()).toBe(was.hash());
    },
  );

  test('the same presses take the heavier one deeper', () => {
    const flight = begun();
    const second = beside(withMoreLead(rig, 2));
    fly(flight, 12, second);
    expect(second.dive.state.depthM).toBeGreaterThan(flight.dive.state.depthM + 0.5);
    expect(new PressCount().upTo(second.dive.changes, second.dive.tick)).toEqual(
      new PressCount().upTo(flight.dive.changes, flight.dive.tick),
    );
  });

  test('a lighter one who stays at the surface hangs upright there while the first lies level below', () => {
    const flight = begun();
    const second = beside(withMoreLead(rig, -6));
    fly(flight, 12, second);
    expect(flight.dive.state.depthM).toBeGreaterThan(2);
    expect(flight.dive.controls.pitchDeg).toBe(0);
    expect(second.dive.state.depthM).toBeLessThan(0.9);
    expect(second.dive.controls.pitchDeg).toBe(90);
  });

  test('by his own hands he is held to nothing of the first one, and keeps what he did when the first goes back', () => {
    const flight = begun();
    const second = new Second({
      rig,
      by: 'own',
      begin: (first) => startBeside(first, rig),
      held: () => new Set<Act>(flight.dive.tick < 5 * TICKS_PER_S ? ['vent', 'out'] : []),
    });
    while (flight.dive.tick < 20 * TICKS_PER_S) {
      flight.run(
        6,
        () => new Set(),
        () => true,
      );
      second.follow(flight.dive);
    }
    expect(flight.dive.state.depthM).toBeLessThan(0.6);
    expect(second.dive.state.depthM).toBeGreaterThan(2);
    const was = second.dive;
    flight.back(10);
    second.follow(flight.dive);
    expect(second.dive.hash()).toBe(diveAt(was, flight.dive.tick).hash());
  });

  test('by his own hands a press counts from the next tick on', () => {
    const flight = begun();
    const second = new Second({
      rig,
      by: 'own',
      begin: (first) => startBeside(first, rig),
      held: () => new Set<Act>(flight.dive.tick > 122 && flight.dive.tick < 150 ? ['vent'] : []),
    });
    for (let frame = 0; frame < 200; frame++) {
      flight.run(
        1,
        () => new Set(),
        () => true,
      );
      second.follow(flight.dive);
    }
    const vents = second.dive.changes.slice(1).map(({ tick, controls }) => [tick, Math.sign(controls.jacketVent)]);
    expect(vents).toEqual([
      [122, 1],
      [149, 0],
    ]);
  });

  test('taken up at a tick, the two change places and nothing that they did is lost', () => {
    const flight = begun();
    const heavy = withMoreLead(rig, 2);
    const second = beside(heavy);
    fly(flight, 14, second);
    const taken = Flight.ofDive(diveAt(second.dive, flight.dive.tick));
    const left = diveAt(flight.dive, flight.dive.tick);
    const hash = left.hash();
    const former = new Second({
      rig,
      by: 'hands',
      begin: (first) => startBeside(first, rig),
      made: { first: taken.dive, dive: left },
    });
    former.follow(taken.dive);
    expect(former.dive.hash()).toBe(hash);
    fly(taken, 6, former);
    taken.back(6);
    former.follow(taken.dive);
    expect(former.dive.hash()).toBe(hash);
    expect(replay(former.dive.run()).hash()).toBe(hash);
  });

  test('depthAtM() lies between his last two ticks', () => {
    const flight = begun();
    const second = beside(withMoreLead(rig, 2));
    fly(flight, 10, second);
    const { tick, state } = second.dive;
    const before = replay(second.dive.run(), tick - 1).state.depthM;
    expect(second.depthAtM(tick / TICKS_PER_S)).toBe(state.depthM);
    expect(second.depthAtM((tick - 1) / TICKS_PER_S)).toBeCloseTo(before, 12);
    expect(second.depthAtM((tick - 0.5) / TICKS_PER_S)).toBeCloseTo((before + state.depthM) / 2, 12);
  });
});

describe('startBeside()', () => {
  test('begins on the same bits where nothing differs, and with the same gas where only the lead does', () => {
    const { dive } = begun();
    expect(startBeside(dive, rigOf(setup))).toEqual(dive.kept[0]);
    const heavy = withMoreLead(rig, 2);
    const under = new Flight(rig, { depthM: 5, jacketM3: 2e-3, pitchDeg: 0 }).dive;
    const start = startBeside(under, heavy);
    expect(start.depthM).toBe(5);
    expect(start.jacketMol).toBeCloseTo(under.state.jacketMol, 12);
    expect(start.cylinderMol).toEqual(under.state.cylinderMol);
  });

  test('who floats begins afloat: the heavier one lower, and at rest', () => {
    const { dive } = begun();
    const heavy = withMoreLead(rig, 2);
    const start = startBeside(dive, heavy);
    expect(start.depthM).toBeGreaterThan(dive.kept[0]!.depthM);
    const netN = netForceN(heavy, { ...start, lungM3: midBreathM3(heavy) });
    expect(Math.abs(netN)).toBeLessThan(0.05);
  });

  test('puts a litre more into the jacket where that is the difference', () => {
    const under = new Flight(rig, { depthM: 8, jacketM3: 2e-3, pitchDeg: 0 }).dive;
    const start = startBeside(under, rig, 1e-3);
    expect(start.jacketMol / under.state.jacketMol).toBeCloseTo(1.5, 9);
  });
});

describe('sideOf()', () => {
  test('counts presses and their seconds up to a tick, one that is held on with them', () => {
    const flight = begun();
    fly(flight, 26);
    const { changes } = flight.dive;
    const at = (s: number) => new PressCount().upTo(changes, s * TICKS_PER_S);
    expect(at(3)).toEqual({ count: 1, seconds: 3 });
    expect(at(10)).toEqual({ count: 1, seconds: expect.closeTo(6, 0) as number });
    expect(at(26).count).toBe(3);
    expect(at(26).seconds).toBeCloseTo(7.4, 0);
  });

  test('counts on from where it was, and anew where somebody goes back, as if it had never counted before', () => {
    const flight = begun();
    fly(flight, 26);
    const { changes } = flight.dive;
    const kept = new PressCount();
    for (const s of [1, 3, 3.05, 8, 14, 26, 12.5, 15.2, 26, 4])
      expect(kept.upTo(changes, s * TICKS_PER_S)).toEqual(new PressCount().upTo(changes, s * TICKS_PER_S));
    const other = begun().dive;
    expect(kept.upTo(other.changes, 10 * TICKS_PER_S)).toEqual({ count: 0, seconds: 0 });
  });

  test('gas used is what left the cylinders, as volume at the surface', () => {
    const flight = begun();
    const fullMol = cylindersMol(flight.dive.kept[0]!.cylinderMol);
    fly(flight, 26);
    const used = fullMol - cylindersMol(flight.dive.state.cylinderMol);
    const { gasUsedM3 } = sideOf(flight.dive, fullMol, new PressCount());
    expect(used).toBeGreaterThan(0);
    // p V = n R T at one standard atmosphere.
    expect(gasUsedM3 * 101325).toBeCloseTo(used * 8.314462618 * rig.waterTemperatureK, 6);
  });
});

describe('otherOf()', () => {
  const ready = (id: string) => Promise.resolve((id === 'temperate-sea' ? temperate : drysuit) as Setup);
  const other = (id: string, of: { rig: Rig; setup: Setup | null } = { rig, setup }) => otherOf(id, of, ready, null);
  const kg = (of: Rig) => of.lead.reduce((sum, piece) => sum + piece.massKg, 0);

  test('gives each difference that is offered, with a rig that is its setup’s, and the way back in words', async () => {
    for (const { options } of differencesFor({ rig, setup }, null))
      for (const { id, words } of options) {
        const found = await other(id);
        expect(found.words).toBe(id.startsWith('ready:') ? found.words : words);
        expect(found.back).not.toBe('');
        const again = rigOf(found.setup!);
        expect(kg(again)).toBeCloseTo(kg(found.rig), 12);
        expect(again.column).toEqual(found.rig.column);
      }
  });

  test('changes the lead by what it says, with or without a setup', async () => {
    expect(kg((await other('lead:2')).rig) - kg(rig)).toBeCloseTo(2, 12);
    expect(kg((await other('lead:-1', { rig, setup: null })).rig) - kg(rig)).toBeCloseTo(-1, 12);
  });

  test('another diver comes into the water of the first', async () => {
    const { rig: own } = await other('ready:drysuit-membrane');
    expect(own.drysuit).not.toBeNull();
    expect(own.column).toEqual(rig.column);
    expect(own.bottomM).toBe(rig.bottomM);
  });

  test('says what cannot be had', async () => {
    await expect(other('change:no such thing')).rejects.toThrow(/cannot have “no such thing”/);
    await expect(other('change:fresh water', { rig, setup: null })).rejects.toThrow(/choose another difference/);
    await expect(other('nothing')).rejects.toThrow(/choose what is different/);
  });
});

describe('levelWith()', () => {
  test('sends a pilot to the depth of the first one, and up with him', () => {
    const flight = begun();
    const second = beside(rig, 'steady');
    second.follow(flight.dive);
    expect(levelWith(flight.dive, second.dive)).toEqual({ kind: 'float' });
    const under = new Flight(rig, { depthM: 6, jacketM3: 2e-3 });
    const there = beside(rig, 'steady');
    there.follow(under.dive);
    expect(levelWith(under.dive, there.dive)).toEqual({ kind: 'travel', depthM: 6 });
    expect(pilotOf('steady', rig, 1).decide(under.dive.state, { kind: 'travel', depthM: 6 })).toHaveProperty(
      'breath',
      1,
    );
  });
});
