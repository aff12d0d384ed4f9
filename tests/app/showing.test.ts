import { describe, expect, test } from 'vitest';
import temperate from '../../src/diver/setups/temperate-sea.yaml';
import heavy from '../../src/diver/setups/two-piece-heavy.yaml';
import { READY_SETUPS, netForceN, type Setup } from '../../src/diver/index.ts';
import { TICKS_PER_S, replay, startState } from '../../src/dive/index.ts';
import { DEMONSTRATIONS } from '../../src/app/demonstrations.ts';
import { neutralGasM3, shownRig, shownStart } from '../../src/app/show-start.ts';
import { Showing } from '../../src/app/showing.ts';
import { secondsTo } from '../../src/app/show-truth.ts';
import { Flight } from '../../src/app/flight.ts';

const SETUPS: Readonly<Record<string, unknown>> = { 'temperate-sea': temperate, 'two-piece-heavy': heavy };
const fetch = (id: string) => Promise.resolve(SETUPS[id] as Setup);
const begin = (id: string) =>
  Showing.begin(
    DEMONSTRATIONS.find((one) => one.id === id)!,
    fetch,
  );

/** Lets time go on with nothing pressed until the run is over. */
function letRun(showing: Showing): void {
  const { step } = showing;
  for (let s = 0; s < 120 && showing.step === step; s++)
    showing.flight.run(
      TICKS_PER_S,
      () => new Set(),
      () => showing.goOn(),
    );
}

/** Walks it by next alone, from the first step to the last, and gives what stood on the stage. */
function walked(showing: Showing): string[] {
  const stood: string[] = [showing.words];
  for (;;) {
    if (showing.runs) letRun(showing);
    if (showing.isLast || !showing.next()) return stood;
    stood.push(showing.words);
    if (showing.runs) letRun(showing);
    if (showing.step.kind === 'say') stood.push(showing.words);
  }
}

describe('every demonstration', () => {
  test.each(DEMONSTRATIONS.map((one) => [one.id, one] as const))(
    '%s begins with one of our setups, asks with four letters, and fills every name it writes',
    async (_, demonstration) => {
      for (const step of demonstration.steps) {
        if (step.kind === 'begin') expect(READY_SETUPS.map(({ id }) => id)).toContain(step.setup);
        if (step.kind === 'ask') expect(step.options).toHaveLength(4);
      }
      for (const words of walked(await Showing.begin(demonstration, fetch)))
        expect(words).not.toMatch(/…|None of these/);
    },
  );
});

describe('The hilltop', () => {
  test('who is lifted goes on up, who is pushed down goes on down, and 30 cm become more than a metre either way', async () => {
    const said = walked(await begin('hilltop')).filter((words) => words.includes('became'));
    expect(said[0]).toMatch(/^C: 30 cm became [12]\.\d m in 25 s/);
    expect(said.at(-1)).toMatch(/^D: 30 cm became [12]\.\d m in 25 s/);
  });

  test('shownStart() takes gas for neutral at 10 m along: light above, heavy below', () => {
    const rig = shownRig(temperate as Setup, 0);
    const netAt = (atM: number) =>
      netForceN(
        rig,
        startState(rig, { ...shownStart(rig, { atM, neutralAtM: 10 }), lungM3: rig.lungs.endExpiratoryM3 }),
      );
    const shift = netAt(10);
    expect(netAt(9.7)).toBeGreaterThan(shift);
    expect(netAt(10.3)).toBeLessThan(shift);
  });
});

describe('Two kilograms too many', () => {
  test('V = m/ρ: each kilogram more wants a kilogram of water displaced, less what the lead displaces', () => {
    const [first, second] = [0, 2].map((kg) => neutralGasM3(shownRig(temperate as Setup, kg), 10));
    // 2 kg of lead displace 2 / 11340 m³; sea water of 35 psu and 15 °C has 1026 kg/m³.
    expect((second! - first!) * 1e3).toBeCloseTo((2 / 1026 - 2 / 11340) * 1e3, 1);
  });

  test('both go side by side: the second is at 7 m sooner than the first', async () => {
    const showing = await begin('two-kilograms');
    expect(walked(showing).at(-1)).toMatch(/^A: at 7 m after 26 s, the other after 30 s\. Now 0\.8 m lie between them/);
  });

  test('beside: the second dives as he would alone, to the bit, also after a step back and in a place that was left', async () => {
    const showing = await begin('two-kilograms');
    showing.next();
    showing.next();
    letRun(showing);
    const alone = () => {
      const rig = shownRig(temperate as Setup, 2);
      const flight = new Flight(rig, shownStart(rig, { atM: 9.5, neutralAtM: 10 }));
      flight.run(
        showing.flight.dive.tick,
        () => new Set(),
        () => true,
      );
      return flight.dive.hash();
    };
    const second = ({ beside }: Showing) => {
      beside!.second.follow(beside!.first.dive);
      return beside!.second.dive.hash();
    };
    expect(second(showing)).toBe(alone());
    const place = JSON.parse(JSON.stringify(showing.place)) as Showing['place'];
    expect(second(await Showing.begin(showing.demonstration, fetch, place))).toBe(alone());
    showing.previous();
    expect(showing.flight.dive.tick).toBe(0);
    expect(second(showing)).toBe(alone());
  });

  test('secondsTo(): between rows by the straight line, from a row on, and null for who never comes there', async () => {
    const showing = await begin('two-kilograms');
    showing.next();
    showing.next();
    letRun(showing);
    const { recording } = showing.flight.dive;
    const depthM = (recording.at(120, 'depthM') + recording.at(121, 'depthM')) / 2;
    expect(secondsTo(recording, 0, depthM)).toBeCloseTo(12.05, 9);
    expect(secondsTo(recording, 60, depthM)).toBeCloseTo(6.05, 9);
    expect(secondsTo(recording, 0, 20)).toBeNull();
  });
});

describe('Runaway descent', () => {
  test('freezes at 10 m and asks, sinks faster still at 20 m, and is back at the fifth second to be taken over', async () => {
    const showing = await begin('runaway-descent');
    showing.next();
    letRun(showing);
    expect(showing.prompt?.kind).toBe('choice');
    expect(showing.flight.dive.state.depthM).toBeCloseTo(10, 1);
    const whole = showing.flight.dive.run();
    showing.next();
    letRun(showing);
    expect(showing.words).toMatch(/^A: 29 m\/min at 10 m, 32 m\/min at 20 m/);
    showing.next();
    expect(showing.flight.dive.hash()).toBe(replay(whole, 5 * TICKS_PER_S).hash());
  });

  test('previous() takes a run back whole, to the bit, and next goes the same way again', async () => {
    const showing = await begin('runaway-descent');
    showing.next();
    letRun(showing);
    const asked = showing.flight.dive.hash();
    showing.next();
    letRun(showing);
    const explained = showing.words;
    showing.previous();
    expect(showing.prompt).not.toBeNull();
    expect(showing.flight.dive.hash()).toBe(asked);
    showing.next();
    letRun(showing);
    expect(showing.words).toBe(explained);
  });

  test('previous() from where it went back has the dive whole again, as the words say, also after a reload', async () => {
    const walk = await begin('runaway-descent');
    for (let run = 0; run < 2; run++) {
      walk.next();
      letRun(walk);
    }
    const [words, deep] = [walk.words, walk.flight.dive.hash()];
    expect(walk.flight.dive.state.depthM).toBeGreaterThan(20);
    walk.next();
    const place = JSON.parse(JSON.stringify(walk.place)) as Showing['place'];
    for (const showing of [walk, await Showing.begin(walk.demonstration, fetch, place)]) {
      showing.previous();
      expect([showing.words, showing.flight.dive.hash()]).toEqual([words, deep]);
      showing.next();
      expect(showing.flight.dive.tick).toBe(5 * TICKS_PER_S);
    }
  });

  test('time does not go on while it is asked, and goes on by whoever lets it where something is said', async () => {
    const showing = await begin('runaway-descent');
    expect(showing.goOn()).toBe(true);
    expect(showing.runs).toBe(true);
    letRun(showing);
    const { tick } = showing.flight.dive;
    expect(showing.prompt).not.toBeNull();
    expect(showing.flight.dive.tick).toBe(tick);
  });
});

describe('a demonstration that was left', () => {
  /** As a browser keeps it. */
  const stored = (showing: Showing) => JSON.parse(JSON.stringify(showing.place)) as Showing['place'];

  test.each(DEMONSTRATIONS.map((one) => [one.id, one] as const))(
    '%s goes on from every step with the same dive and words, forward and back',
    async (_, demonstration) => {
      const showing = await Showing.begin(demonstration, fetch);
      for (;;) {
        const again = await Showing.begin(demonstration, fetch, stored(showing));
        expect([again.step, again.words, again.prompt]).toEqual([showing.step, showing.words, showing.prompt]);
        expect(again.flight.dive.hash()).toBe(showing.flight.dive.hash());
        const back = await Showing.begin(demonstration, fetch, stored(showing));
        const beside = await Showing.begin(demonstration, fetch, stored(again));
        expect(back.previous()).toBe(beside.previous());
        expect(back.flight.dive.hash()).toBe(beside.flight.dive.hash());
        if (showing.runs) {
          letRun(showing);
          letRun(again);
          expect([again.step, again.words]).toEqual([showing.step, showing.words]);
          expect(again.flight.dive.hash()).toBe(showing.flight.dive.hash());
        }
        if (!showing.next()) break;
      }
    },
  );

  test('in the middle of a run, with what was pressed in it, it is as it was', async () => {
    const showing = await begin('runaway-descent');
    showing.next();
    showing.flight.run(
      6 * TICKS_PER_S,
      () => new Set(['add', 'in'] as const),
      () => showing.goOn(),
    );
    const again = await Showing.begin(showing.demonstration, fetch, stored(showing));
    expect([again.runs, again.flight.dive.tick]).toEqual([true, 6 * TICKS_PER_S]);
    expect(again.flight.dive.hash()).toBe(showing.flight.dive.hash());
    expect(again.flight.hands.levelCl).toBe(showing.flight.hands.levelCl);
  });

  test.each<[string, (place: Showing['place']) => unknown]>([
    ['is of another', (place) => ({ ...place, id: 'hilltop' })],
    ['has no step', (place) => ({ ...place, trail: [{ ...place.trail[0]!, step: 99 }] })],
    ['stands nowhere', (place) => ({ ...place, trail: [] })],
    ['ends otherwise', (place) => ({ ...place, dives: [{ ...place.dives[0]!, endHash: '0' }] })],
    ['is far too long', (place) => ({ ...place, dives: [{ ...place.dives[0]!, ticks: 1e12 }] })],
    ['is no place at all', () => ({ id: 'runaway-descent' })],
  ])('what was stored and %s is refused', async (_, spoilt) => {
    const showing = await begin('runaway-descent');
    const place = spoilt(stored(showing)) as Showing['place'];
    await expect(Showing.begin(showing.demonstration, fetch, place)).rejects.toThrow();
  });
});
