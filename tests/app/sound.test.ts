import { describe, expect, test } from 'vitest';
import temperate from '../../src/diver/setups/temperate-sea.yaml';
import { midBreathM3, rigOf, type Setup } from '../../src/diver/index.ts';
import { Dive, TICKS_PER_S, midBreathCl, restingControls, startState, type Controls } from '../../src/dive/index.ts';
import { neutralStart } from '../../src/app/show-start.ts';
import { Captions } from '../../src/app/sound-captions.ts';
import { listened, soundsBetween, toneHz, type Sounds } from '../../src/app/sound-heard.ts';
import { SoundOut } from '../../src/app/sound-out.ts';

const rig = rigOf(temperate as Setup);
const rest = restingControls(midBreathCl(rig));

function begun(depthM = 10, jacketM3 = 5e-3): Dive {
  return new Dive(rig, startState(rig, { depthM, jacketM3 }), rest);
}

/** What is heard frame by frame, two ticks each, while a diver does something. */
function heard(dive: Dive, controls: Partial<Controls>, seconds: number): { sounds: Sounds; tick: number }[] {
  dive.steer({ ...rest, ...controls });
  return Array.from({ length: seconds * 60 }, () => {
    const before = listened(dive);
    dive.advance(2);
    return { sounds: soundsBetween(rig, before, listened(dive))!, tick: dive.tick };
  });
}
const litres = (all: readonly number[]) => all.reduce((sum, lps) => sum + lps / 60, 0);

describe('soundsBetween()', () => {
  test('of a diver who hovers each breath is heard in and out, of the size that the setup says', () => {
    const dive = new Dive(rig, startState(rig, neutralStart(rig, 10)), rest);
    const sizes: number[] = [];
    let before = 0;
    for (const { sounds } of heard(dive, {}, 20)) {
      const way = Math.sign(sounds.breathLps);
      if (way !== 0 && way !== before) sizes.push(0);
      if (way !== 0) sizes[sizes.length - 1]! += sounds.breathLps / 60;
      before = way;
    }
    // The first begins at the end of a breath out, the last is cut off.
    const whole = sizes.slice(1, -1);
    expect(whole.length).toBeGreaterThanOrEqual(4);
    whole.forEach((litre, i) => expect(litre / ((i % 2 ? 1 : -1) * rig.lungs.tidalM3 * 1e3)).toBeCloseTo(1, 1));
  });

  test('held breath is silent, also while the diver sinks', () => {
    const dive = begun(10, 0);
    const held = heard(dive, { breath: 2 }, 5);
    expect(dive.state.depthM).toBeGreaterThan(10.5);
    expect(new Set(held.map(({ sounds }) => sounds.breathLps))).toEqual(new Set([0]));
  });

  test('the inflator is heard as long as it is open and with what it lets in, the vent likewise', () => {
    const dive = begun();
    const added = heard(dive, { jacketAdd: 1 }, 1).flatMap(({ sounds }) => sounds.gas);
    expect(new Set(added.map(({ name, way }) => `${name} ${way}`))).toEqual(new Set(['inflator in']));
    expect(litres(added.map(({ lps }) => lps))).toBeCloseTo(dive.state.letInM3 * 1e3, 6);
    expect(heard(dive, {}, 1).flatMap(({ sounds }) => sounds.gas)).toEqual([]);
    const vented = heard(dive, { jacketVent: 2 }, 1).flatMap(({ sounds }) => sounds.gas);
    expect(new Set(vented.map(({ name, way }) => `${name} ${way}`))).toEqual(new Set(['vent out']));
    expect(litres(vented.map(({ lps }) => lps))).toBeCloseTo(dive.state.letOutM3 * 1e3, 6);
  });

  test('a jacket that is filled until it can hold no more lets the rest out by its own valve, and by nothing else', () => {
    const dive = begun(3, rig.jacket.capacityM3 - 1e-3);
    const names = heard(dive, { jacketAdd: 1 }, 3).flatMap(({ sounds }) => sounds.gas.map(({ name }) => name));
    expect(new Set(names)).toEqual(new Set(['inflator', 'relief valve']));
  });

  test('a press that began and ended between two frames is heard by its name', () => {
    const dive = begun();
    const before = listened(dive);
    for (const jacketVent of [2, 0]) {
      dive.steer({ ...rest, jacketVent });
      dive.advance(6);
    }
    expect(soundsBetween(rig, before, listened(dive))!.gas.map(({ name }) => name)).toEqual(['vent']);
  });

  test('a vent that has nothing to let out is silent', () => {
    const dive = begun(10, 0);
    heard(dive, { jacketVent: 2 }, 2);
    expect(heard(dive, { jacketVent: 2 }, 1).flatMap(({ sounds }) => sounds.gas)).toEqual([]);
  });

  test('what is blown into the jacket by mouth is no bubbling breath out', () => {
    const blown = heard(begun(), { oral: 1, breath: 1, lungCl: Math.round(midBreathM3(rig) * 1e5) }, 3);
    const mouth = blown.filter(({ sounds }) => sounds.gas.some(({ name }) => name === 'by mouth'));
    expect(mouth.length).toBeGreaterThan(10);
    for (const { sounds } of mouth) expect(sounds.breathLps).toBeGreaterThanOrEqual(0);
  });

  test('nothing is heard of a dive that stands still, goes back or leaps', () => {
    const dive = begun();
    dive.advance(TICKS_PER_S);
    const before = listened(dive);
    expect(soundsBetween(rig, before, listened(dive))).toBeNull();
    dive.advance(TICKS_PER_S);
    expect(soundsBetween(rig, before, listened(dive))).toBeNull();
    expect(soundsBetween(rig, listened(dive), before)).toBeNull();
  });
});

test('toneHz(): equal speeds up and down are equal steps from the middle, still is silent, and no speed leaves two octaves', () => {
  expect(toneHz(0)).toBeNull();
  expect(toneHz(0.4 / 60)).toBeNull();
  for (const mpmin of [1, 4, 9, 18]) {
    expect(toneHz(-mpmin / 60)!).toBeGreaterThan(440);
    expect(toneHz(-mpmin / 60)! * toneHz(mpmin / 60)!).toBeCloseTo(440 ** 2, 3);
  }
  expect([toneHz(-5), toneHz(5)]).toEqual([880, 220]);
});

describe('Captions', () => {
  test('say how long the inflator is open, go on saying it for a while, and then no more', () => {
    const dive = begun();
    const captions = new Captions();
    const hear = (controls: Partial<Controls>, seconds: number) => {
      for (const { sounds, tick } of heard(dive, controls, seconds)) captions.hear(sounds, tick);
    };
    hear({}, 1);
    hear({ jacketAdd: 1 }, 0.8);
    expect([captions.view.gas, captions.view.over]).toEqual([['inflator: 0.8 s'], []]);
    hear({}, 1);
    expect([captions.view.gas, captions.view.over]).toEqual([['inflator: 0.8 s'], ['inflator: 0.8 s']]);
    hear({}, 2);
    expect(captions.view.gas).toEqual([]);
  });

  test('name the breath and which way the tone says the diver goes', () => {
    const dive = begun(10, 0);
    const captions = new Captions();
    const said = heard(dive, {}, 12).map(({ sounds, tick }) => {
      captions.hear(sounds, tick);
      return captions.view;
    });
    expect(new Set(said.map(({ breath }) => breath))).toEqual(new Set(['', 'breath in', 'breath out']));
    expect(said.at(-1)!.tone).toBe('low tone: sinking');
    captions.clear();
    expect(captions.view).toEqual({ breath: '', gas: [], over: [], tone: '' });
  });
});

/** A stand-in that knows what is connected and what was set, and makes no sound. */
function fakeContext() {
  const param = (value = 0) => ({
    value,
    setTargetAtTime(to: number) {
      this.value = to;
    },
    cancelScheduledValues: () => undefined,
  });
  const sources: { to: unknown[] }[] = [];
  const node = (more: object) => {
    const made = { to: [] as unknown[], connect: (other: unknown) => made.to.push(other), ...more };
    return made;
  };
  const source = (more: object) => {
    const made = node({ ...more, start: () => sources.push(made) });
    return made;
  };
  const tones: { frequency: { value: number }; type: string; to: unknown[] }[] = [];
  const context = {
    state: 'running',
    currentTime: 0,
    sampleRate: 8000,
    destination: node({}),
    createGain: () => node({ gain: param(1) }),
    createBiquadFilter: () => node({ frequency: param(), Q: param() }),
    createBufferSource: () => source({}),
    createOscillator: () => {
      const made = source({ frequency: param(), type: 'sine' });
      tones.push(made as never);
      return made;
    },
    createBuffer: (_: number, length: number) => ({ getChannelData: () => new Float32Array(length) }),
    suspend: () => Promise.resolve((context.state = 'suspended')),
    resume: () => Promise.resolve((context.state = 'running')),
  };
  /** How loud a source comes out: all gains on its way, the most of all ways. */
  const loudness = (from: { to: unknown[]; gain?: { value: number } }): number => {
    if ((from as unknown) === context.destination) return 1;
    // What moves another node's number makes no sound itself.
    if (!('to' in from)) return 0;
    const own = from.gain?.value ?? 1;
    return own * Math.max(0, ...(from.to as (typeof from)[]).map(loudness));
  };
  return { context, sources, tones, loudest: () => Math.max(...sources.map(loudness)), loudness };
}

const still: Sounds = { breathLps: 0, gas: [], speedMps: 0, toneHz: null };

describe('SoundOut', () => {
  test('is silent until something sounds, and again at once when time stands', () => {
    const { context, loudest } = fakeContext();
    const out = new SoundOut(context as unknown as AudioContext);
    expect(loudest()).toBe(0);
    out.play(still, 1);
    expect(loudest()).toBe(0);
    out.play({ ...still, breathLps: -0.6 }, 1);
    expect(loudest()).toBeGreaterThan(0.05);
    out.play(null, 1);
    expect(loudest()).toBe(0);
  });

  test('every part is heard: breath in and out, gas in and out, and the tone at its pitch', () => {
    const { context, loudest, tones, loudness } = fakeContext();
    const out = new SoundOut(context as unknown as AudioContext);
    const gas = (way: 'in' | 'out') => ({ ...still, gas: [{ name: 'vent' as const, way, lps: 1 }] });
    for (const one of [{ ...still, breathLps: 0.5 }, { ...still, breathLps: -0.5 }, gas('in'), gas('out')]) {
      out.play(one, 1);
      expect(loudest()).toBeGreaterThan(0.05);
      out.play(still, 1);
      expect(loudest()).toBe(0);
    }
    out.play({ ...still, speedMps: -0.15, toneHz: 620 }, 1);
    const tone = tones.find(({ type }) => type === 'triangle')!;
    expect([tone.frequency.value, loudness(tone) > 0]).toEqual([620, true]);
  });

  test('a lower volume is quieter, and never is more played than can be', () => {
    const { context, loudest } = fakeContext();
    const out = new SoundOut(context as unknown as AudioContext);
    const loud = { ...still, breathLps: -40 };
    out.play(loud, 1);
    const full = loudest();
    out.play(loud, 0.5);
    expect(loudest()).toBeLessThan(full / 2);
    expect(full).toBeLessThanOrEqual(1);
  });

  test('lets the machine sleep after a second of silence, and wakes it', () => {
    const { context } = fakeContext();
    const out = new SoundOut(context as unknown as AudioContext);
    out.play({ ...still, breathLps: 1 }, 1);
    out.play(null, 1);
    expect(context.state).toBe('running');
    context.currentTime = 1.5;
    out.play(null, 1);
    expect(context.state).toBe('suspended');
    out.play({ ...still, breathLps: 1 }, 1);
    expect(context.state).toBe('running');
    out.rest();
    expect(context.state).toBe('suspended');
  });
});
