import type { Sounds } from './sound-heard.ts';

/** How fast a sound comes and goes, seconds; all of them, when time stops; and the rest before the machine may sleep. */
const EASE_S = 0.04;
const STOP_S = 0.015;
const REST_S = 1;
/** Length of the noise that is played round and round, seconds. */
const NOISE_S = 2;

/** One voice made of noise: which part of it, how loud at most, at how many litres a second, and how often it bubbles, hertz. */
const VOICES = {
  in: { filter: 'bandpass', hz: 1300, loud: 0.22, fullLps: 1, bubblesHz: 0 },
  out: { filter: 'bandpass', hz: 430, loud: 0.4, fullLps: 1, bubblesHz: 11 },
  add: { filter: 'highpass', hz: 2600, loud: 0.16, fullLps: 2, bubblesHz: 0 },
  vent: { filter: 'bandpass', hz: 820, loud: 0.35, fullLps: 2, bubblesHz: 17 },
} as const;
const TONE_LOUD = 0.07;

type Voice = keyof typeof VOICES;

/** Makes the sounds: filtered noise for gas, bubbling where it leaves, and one quiet tone. Nothing is recorded, nothing is fetched. */
export class SoundOut {
  readonly #context: AudioContext;
  readonly #all: GainNode;
  readonly #voices: ReadonlyMap<Voice, GainNode>;
  readonly #tone: OscillatorNode;
  readonly #toneLoud: GainNode;
  readonly #set = new Map<AudioParam, number>();
  #silentSinceS = 0;

  constructor(context: AudioContext) {
    this.#context = context;
    this.#all = context.createGain();
    this.#all.gain.value = 0;
    this.#all.connect(context.destination);
    const noise = context.createBufferSource();
    noise.buffer = noiseOf(context);
    noise.loop = true;
    noise.start();
    this.#voices = new Map(
      (Object.keys(VOICES) as Voice[]).map((voice) => [voice, this.#voice(noise, VOICES[voice])] as const),
    );
    this.#toneLoud = this.#quiet();
    this.#tone = context.createOscillator();
    this.#tone.type = 'triangle';
    this.#tone.connect(this.#toneLoud);
    this.#tone.start();
  }

  /** Sounds as a dive does now; null is silence. @param volume 0…1 */
  play(sounds: Sounds | null, volume: number): void {
    const context = this.#context;
    if (sounds) {
      this.#silentSinceS = NaN;
      if (context.state === 'suspended') void context.resume();
      const { breathLps, gas, toneHz } = sounds;
      const passing = (way: 'in' | 'out') => Math.max(0, ...gas.filter((one) => one.way === way).map(({ lps }) => lps));
      this.#sound('in', breathLps);
      this.#sound('out', -breathLps);
      this.#sound('add', passing('in'));
      this.#sound('vent', passing('out'));
      this.#to(this.#toneLoud.gain, toneHz === null ? 0 : TONE_LOUD, EASE_S);
      if (toneHz !== null) this.#to(this.#tone.frequency, toneHz, EASE_S);
      // Ears hear in ratios: half the way of a slider is a quarter.
      this.#to(this.#all.gain, volume * volume, EASE_S);
      return;
    }
    this.#to(this.#all.gain, 0, STOP_S);
    if (Number.isNaN(this.#silentSinceS)) this.#silentSinceS = context.currentTime;
    if (context.state === 'running' && context.currentTime - this.#silentSinceS > REST_S) this.rest();
  }

  /** Silence at once, also where nothing calls any more: the page is hidden, or sound was switched off. */
  rest(): void {
    this.#set.delete(this.#all.gain);
    this.#all.gain.cancelScheduledValues(0);
    this.#all.gain.value = 0;
    void this.#context.suspend();
  }

  #sound(voice: Voice, lps: number): void {
    const { loud, fullLps } = VOICES[voice];
    this.#to(this.#voices.get(voice)!.gain, loud * Math.sqrt(Math.min(Math.max(lps, 0) / fullLps, 1)), EASE_S);
  }

  #to(param: AudioParam, value: number, easeS: number): void {
    if (this.#set.get(param) === value) return;
    this.#set.set(param, value);
    param.setTargetAtTime(value, this.#context.currentTime, easeS);
  }

  #voice(noise: AudioNode, { filter, hz, bubblesHz }: (typeof VOICES)[Voice]): GainNode {
    const part = this.#context.createBiquadFilter();
    part.type = filter;
    part.frequency.value = hz;
    part.Q.value = 0.8;
    const loud = this.#quiet();
    noise.connect(part);
    if (bubblesHz === 0) part.connect(loud);
    else {
      const bubbling = this.#context.createGain();
      bubbling.gain.value = 0.55;
      const often = this.#context.createOscillator();
      often.frequency.value = bubblesHz;
      const deep = this.#context.createGain();
      deep.gain.value = 0.45;
      often.connect(deep);
      deep.connect(bubbling.gain);
      often.start();
      part.connect(bubbling);
      bubbling.connect(loud);
    }
    return loud;
  }

  #quiet(): GainNode {
    const gain = this.#context.createGain();
    gain.gain.value = 0;
    gain.connect(this.#all);
    return gain;
  }
}

/** White noise, the same every time. */
function noiseOf(context: BaseAudioContext): AudioBuffer {
  const buffer = context.createBuffer(1, NOISE_S * context.sampleRate, context.sampleRate);
  const samples = buffer.getChannelData(0);
  let at = 1;
  for (let i = 0; i < samples.length; i++) {
    at = (Math.imul(at, 1664525) + 1013904223) >>> 0;
    samples[i] = at / 2 ** 31 - 1;
  }
  return buffer;
}
