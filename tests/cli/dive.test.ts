import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { runText } from '../../src/dive/run-text.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { chanceOf } from '../fixtures/setups/mutants.ts';
import { exampleWith, ran, ranWatched, resultOf, useFolder, type PrintedFlight } from './fixture.ts';

const file = useFolder();

describe('dive', () => {
  const suits = {
    five: {},
    'two-piece': { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 },
    fresh: { salinityPsu: 0, temperatureC: 8, thicknessMm: 7 },
  } as const;

  // Landmarks of the physics, derived there; level, lungs 3.2 L, no controls; ±0.1 m, ±0.3 m/min (printed whole).
  test.each<[keyof typeof suits, number, number, [number, number, number], number]>([
    ['five', 3.73, 0, [5.5, 11.3, 17.7], 20],
    ['five', 3.73, 4, [9.5, 18.8, 28.6], 30],
    ['two-piece', 8.14, 0, [2.8, 7.6, 14.6], 23],
    ['two-piece', 8.14, 4, [9.2, 19.4, 30.4], 34],
    ['fresh', 2.14, 0, [5.3, 11.4, 18.4], 22],
  ])('%s with %s + %s kg sinks as the landmarks say', (suit, leadKg, surplusKg, depthsM, mpmin) => {
    const path = file('sinks.yaml', exampleWith(suits[suit], leadKg + surplusKg));
    const words = ['dive', path, '--from', 1.5, '--seconds', 60, '--every', 20, '--lungs', 3.2, '--level'];
    const { samples } = resultOf<PrintedFlight>(...words);
    expect(samples.map(({ tS }) => tS)).toEqual([0, 20, 40, 60]);
    samples.slice(1).forEach(({ depthM }, i) => expect(Math.abs(depthM - depthsM[i])).toBeLessThanOrEqual(0.1));
    // The table prints whole metres a minute.
    expect(Math.round(samples[3].speedMps * 60)).toBe(mpmin);
    for (const { lungsL, pitchDeg } of samples) {
      expect(lungsL).toBeCloseTo(3.2, 12);
      expect(pitchDeg).toBe(0);
    }
  });

  test('breathes about mid-breath where no lungs are asked for', () => {
    const { samples } = resultOf<PrintedFlight>(
      ...['dive', 'temperate-sea', '--from', 5, '--seconds', 30, '--every', 0.1],
    );
    const lungs = samples.slice(60).map(({ lungsL }) => lungsL);
    expect(Math.min(...lungs)).toBeCloseTo(2.7, 2);
    expect(Math.max(...lungs)).toBeCloseTo(3.7, 2);
  });

  test('shows the start, each step and the end, whatever the step', () => {
    const times = (seconds: number, every: number) =>
      resultOf<PrintedFlight>(...['dive', 'pool', '--from', 2, '--seconds', seconds, '--every', every]).samples.map(
        ({ tS }) => tS,
      );
    expect(times(25, 10)).toEqual([0, 10, 20, 25]);
    expect(times(0, 10)).toEqual([0]);
    expect(times(1, 0.25)).toEqual([0, 0.25, 0.5, 0.75, 1]);
  });

  test('ends in the same hash however often it is looked at', () => {
    const hash = (every: number) =>
      resultOf<PrintedFlight>('dive', 'halocline', '--from', 3, '--seconds', 47.5, '--every', every).hash;
    expect(new Set([0.1, 0.7, 3.33, 60].map(hash)).size).toBe(1);
  });

  test('says when the bottom is touched', () => {
    const { events, samples } = resultOf<PrintedFlight>(
      ...['dive', file('heavy.yaml', exampleWith({ bottomM: 10 }, 12)), '--from', 8, '--seconds', 30, '--level'],
    );
    expect(events.map(({ kind }) => kind)).toContain('bottom-touched');
    expect(samples.at(-1)!.depthM).toBeCloseTo(9.75, 6);
  });

  test('draws progress where a person watches, and nowhere else', () => {
    const words = ['dive', 'pool', '--from', 2, '--seconds', 600];
    expect(ranWatched(true, ...words).err).toMatch(/\rdiving: \d+ %/);
    expect(ranWatched(true, ...words).out).toBe(ran(...words).out);
    expect(ran(...words).err).toBe('');
  });
});

describe('dive --controls', () => {
  const dived = (setup: string, seconds: number, every: number, controls: string, ...more: string[]) =>
    resultOf<PrintedFlight>(
      ...['dive', setup, '--from', 5, '--seconds', seconds, '--every', every],
      ...['--controls', file('controls.yaml', controls), ...more],
    );

  test('holds what is pressed until it changes: the jacket takes gas for just that time', () => {
    const { samples } = dived(
      'temperate-sea',
      6,
      1,
      '- { tS: 1, jacketAdd: true }\n- { tS: 3, jacketAdd: false }\n',
      '--lungs',
      '3.2',
    );
    const jacket = samples.map(({ jacketL }) => jacketL);
    expect(jacket.slice(0, 2)).toEqual([0, 0]);
    // 2.5 L/s at one standard atmosphere, choked: (9.5 bar + p) / (9.5 bar + p0) times that many moles; at p it fills 1/p of it.
    const ambientPa = 101325 + 5 * 1025.97 * 9.80665;
    const litresPerS = (2.5 * 101325 * ((9.5e5 + ambientPa) / (9.5e5 + 101325))) / ambientPa;
    expect(jacket[3]).toBeCloseTo(2 * litresPerS, 0);
    expect(Math.abs(jacket[5] / jacket[3] - 1)).toBeLessThan(0.2);
  });

  test('changes fall on the next twentieth of a second', () => {
    const first = (tS: number) => dived('temperate-sea', 2, 0.1, `[{"tS": ${tS}, "lungsL": 5}]`, '--lungs', '3.2').hash;
    expect(first(0.96)).toBe(first(1));
    expect(first(1.0)).toBe(first(0.951));
    expect(first(1.01)).toBe(first(1.05));
    expect(first(1.01)).not.toBe(first(1));
    expect(first(0.15)).toBe(first(0.11));
  });

  test('a hand that takes lead off does so though something else falls on the same twentieth of a second', () => {
    const taken = (also: string) => {
      const controls = file('hand.yaml', `- { tS: 0.01, takeOff: 1 }\n${also}`);
      const words = ['dive', 'temperate-sea', '--from', 0, '--seconds', 1];
      return resultOf<PrintedFlight>(...words, '--controls', controls).events.map(({ kind }) => kind);
    };
    expect(taken('')).toContain('lead-taken-off');
    expect(taken('- { tS: 0.02, finsN: 10 }\n')).toContain('lead-taken-off');
  });

  test('works every control in the units of its key', () => {
    const all = dived(
      'temperate-sea',
      8,
      1,
      `- { tS: 0, breath: direct, lungsL: 4.5 }
- { tS: 2, pitchDeg: 90, breath: held }
- { tS: 4, pitchDeg: 90, jacketVent: shoulder, oral: false, breath: automatic }
- { tS: 6, torqueNm: -30, release: [1] }
`,
    );
    expect(all.samples[2].lungsL).toBeCloseTo(4.5, 6);
    expect(all.samples[6].pitchDeg).toBeGreaterThan(60);
    expect(all.samples[8].pitchDeg).toBeLessThan(all.samples[6].pitchDeg - 5);
    expect(all.events).toContainEqual(expect.objectContaining({ kind: 'lead-released', tS: 6, piece: 1 }));
  });

  test('--level holds the attitude whatever the controls say', () => {
    const { samples } = dived('temperate-sea', 5, 1, '[{ tS: 0, pitchDeg: 90 }]', '--level');
    expect(samples.every(({ pitchDeg }) => pitchDeg === 0)).toBe(true);
  });

  test('works a drysuit, and a closed loop', () => {
    const suit = dived(
      'drysuit-membrane',
      4,
      1,
      '[{ tS: 0, suitAdd: true, suitValveKPa: 5 }, { tS: 2, suitAdd: false }]',
    );
    expect(suit.samples[2].suitL).toBeGreaterThan(suit.samples[0].suitL + 2);
    const loop = dived('closed-loop', 4, 1, '[{ tS: 0, diluent: true }, { tS: 1, diluent: false, noseVent: true }]');
    expect(loop.samples[1].loopL).toBeGreaterThan(loop.samples[0].loopL);
    expect(loop.samples[3].loopL).toBeLessThan(loop.samples[1].loopL);
    expect(loop.samples[0].lungsL).toBeNull();
  });

  test('lets things go wrong: a current of twelve metres a minute, a nudge, gas that runs low', () => {
    const still = dived('temperate-sea', 30, 1, '[]');
    const wrong = dived(
      'temperate-sea',
      30,
      1,
      `- { tS: 2, currentMpmin: 12, currentS: 10 }
- { tS: 20, nudgeNs: 40 }
- { tS: 25, gasLeftBar: 40 }
`,
    );
    // Who would be still goes nearly as the water: two metres in ten seconds, and what depth itself then does.
    expect(wrong.samples[13].depthM - still.samples[13].depthM).toBeGreaterThan(1.7);
    expect(wrong.samples[13].depthM - still.samples[13].depthM).toBeLessThan(2.6);
    expect(wrong.samples[26].cylinderBar).toBeLessThanOrEqual(40);
    expect(wrong.samples[26].cylinderBar).toBeGreaterThan(38);
    expect(wrong.events.map(({ kind, tS }) => [kind, tS])).toEqual([
      ['down-current', 2],
      ['current-end', 13],
      ['nudged-up', 20],
      ['gas-lost', 25],
    ]);
  });

  test('a nudge of 40 N s upwards takes off what about 200 kg have, the water carried along counted, less some drag', () => {
    const speed = (text: string) => dived('temperate-sea', 3, 0.25, text).samples[9].speedMps;
    const change = speed('[{ tS: 2, nudgeNs: 40 }]') - speed('[]');
    expect(change).toBeLessThan(-0.175);
    expect(change).toBeGreaterThan(-0.21);
  });

  test('what goes wrong does not depend on how often it is looked at, and is in the run', () => {
    const path = file('wrong.run');
    const text = '[{ tS: 1.33, currentMpmin: -9, currentS: 2.5 }, { tS: 2.02, nudgeNs: -30, finsN: 5 }]';
    const hashes = [0.1, 0.7, 5].map((every) => dived('temperate-sea', 10, every, text, '--save', path).hash);
    expect(new Set(hashes).size).toBe(1);
    expect(resultOf<PrintedFlight>('replay', path, '--every', 5)).toMatchObject({ hash: hashes[0], hashMet: true });
  });

  test('reports every problem of the file on a line of its own, and dives nothing', () => {
    const path = file(
      'bad.yaml',
      `- { tS: 0, jacketAd: true }
- { tS: 2, finsN: 400 }
- { tS: 1, jacketVent: sholder }
- { tS: 3, breath: yes }
- { tS: 4, release: [9] }
`,
    );
    const { code, out, err } = ran('dive', 'temperate-sea', '--from', 5, '--seconds', 5, '--controls', path);
    expect([code, out]).toEqual([1, '']);
    const lines = err.trim().split('\n');
    expect(lines.map((line) => /line (\d+)/.exec(line)?.[1])).toEqual(['1', '2', '3', '4']);
    expect(lines[0]).toContain('Write jacketAdd');
    expect(lines[1]).toContain('from -100 to 100');
    expect(lines[2]).toContain('Write shoulder');
  });

  test.each([
    ['out of order', '[{ tS: 2, finsN: 1 }, { tS: 2, finsN: 2 }]', 'temperate-sea', 'order of time'],
    ['both attitudes', '[{ tS: 2, pitchDeg: 1, torqueNm: 2 }]', 'temperate-sea', 'one of them'],
    ['a current without its time', '[{ tS: 2, currentMpmin: 9 }]', 'temperate-sea', 'for how long'],
    ['a time without its current', '[{ tS: 2, currentS: 9 }]', 'temperate-sea', 'currentS without currentMpmin'],
    ['a current too fast', '[{ tS: 2, currentMpmin: 90, currentS: 9 }]', 'temperate-sea', 'from -60 to 60'],
    ['a blow', '[{ tS: 2, nudgeNs: 1000 }]', 'temperate-sea', 'from -500 to 500'],
    ['no gas at all', '[{ tS: 2, gasLeftBar: 0 }]', 'temperate-sea', 'from 1 to 300'],
    ['no drysuit', '[{ tS: 2, suitAdd: true }]', 'temperate-sea', 'no drysuit'],
    ['no up-line', '[{ tS: 2, holdLine: true }]', 'temperate-sea', 'no up-line'],
    ['no ledge', '[{ tS: 2, ledge: false }]', 'temperate-sea', 'no ledge'],
    ['no loop', '[{ tS: 2, diluent: true }]', 'temperate-sea', 'no closed loop'],
    ['a loop that is breathed', '[{ tS: 2, lungsL: 3 }]', 'closed-loop', 'a closed loop'],
    ['lead that stays', '[{ tS: 2, release: [99] }]', 'temperate-sea', 'can be let go'],
    ['no list', 'tS: 2', 'temperate-sea', 'a list of changes'],
    ['nothing', '', 'temperate-sea', 'a list of changes'],
  ])('refuses a controls file: %s', (_, text, setup, says) => {
    const { code, err } = ran('dive', setup, '--from', 5, '--seconds', 5, '--controls', file('c.yaml', text));
    expect(code).toBe(1);
    expect(err).toMatch(/: line \d+: /);
    expect(err).toContain(says);
  });
});

describe('dive --save and replay', () => {
  test('bring the same samples, events and hash, and hashMet', () => {
    const controls = file(
      'all.yaml',
      '[{ tS: 3, jacketAdd: true, pitchDeg: 40 }, { tS: 5, jacketAdd: false, finsN: 20 }]',
    );
    const path = file('dive.run');
    const words = ['--seconds', 90, '--every', 7, '--controls', controls, '--save', path];
    const dived = resultOf<PrintedFlight>('dive', 'drysuit-foam', '--from', 6, ...words);
    const again = resultOf<PrintedFlight>('replay', path, '--every', 7);
    expect(again).toEqual({ ...dived, hashMet: true });
    expect(readFileSync(path).length).toBeLessThan(5000);
  });

  test('a run with presses between twentieths ends as it did', () => {
    const dive = busyDive(readyRig('temperate-sea'), 20, chanceOf(5));
    expect(dive.changes.some(({ tick }) => tick % 6 !== 0)).toBe(true);
    const path = file('busy.run', runText(dive.run(), { name: 'Busy' }));
    expect(resultOf<PrintedFlight>('replay', path, '--every', 3)).toMatchObject({ hash: dive.hash(), hashMet: true });
  });

  test('a run that ends otherwise than its file says is reported, exit 1', () => {
    const path = file('held.run');
    resultOf('dive', 'temperate-sea', '--from', 6, '--seconds', 20, '--lungs', 3.2, '--level', '--save', path);
    const text = new TextDecoder().decode(gunzipSync(readFileSync(path)));
    const other = file('other.run', text.replace(/("controls": \[(?:-?\d+,){7})\d+/, '$1300'));
    const { code, out, err } = ran('replay', other);
    expect(code).toBe(1);
    expect((JSON.parse(out) as PrintedFlight).hashMet).toBe(false);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(ran('replay', file('same.run', text)).code).toBe(0);
  });

  test('a run file that is bad is refused with its line, exit 1', () => {
    const { code, out, err } = ran('replay', file('bad.run', '{\n"format": "midwater run",\n"version": 9\n}'));
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/bad\.run: line 3: version: found 9/);
  });
});
