import type { Gauges } from '../lesson/index.ts';
import type { Units } from './settings.ts';
import { depthText, rateParts, weightParts } from './units.ts';

/** A store of gas: what it holds here, and what the same gas would fill at the surface. */
export interface GasStore {
  readonly name: string;
  readonly hereM3: number;
  readonly surfaceM3: number;
}

/** A part of the ledger: its own lift less its weight, kilograms of pull, never below 0. */
export interface Pull {
  readonly name: string;
  readonly kg: number;
  readonly isGas: boolean;
  /** The tenths that are written of it, so that what is written of its side adds up. */
  readonly saidKg: number;
}

/** What holds up and what pulls down. */
export interface Pulls {
  readonly up: readonly Pull[];
  readonly down: readonly Pull[];
}

/** What is written on pulls, added up, kilograms. */
export function saidSumKg(pulls: readonly Pull[]): number {
  return pulls.reduce((sum, { saidKg }) => sum + saidKg, 0);
}

/** What is read of one moment; SI but for the pulls. */
export interface Readings extends Pulls {
  readonly depthM: number;
  readonly speedMps: number;
  /** Net force with the lungs at mid-breath, up positive: where light and heavy are judged. */
  readonly midNetN: number;
  /** Which breath that is: its middle, or the lungs as they are where they do what they are told. */
  readonly judged: 'mid-breath' | 'now';
  readonly place: 'under' | 'afloat' | 'on the bottom' | 'on the ledge';
  readonly lungM3: number;
  readonly levelM3: number;
  readonly totalLungM3: number;
  readonly gas: readonly GasStore[];
  /** Where the bars of gas end: the same all through a dive. */
  readonly gasScaleM3: number;
}

/** The word of the third number and its amount: afloat and on the bottom stand before any kilograms. */
export function weightWords(readings: Readings, units: Units): { word: string; amount: string } {
  if (readings.place === 'afloat') return { word: 'afloat', amount: '' };
  return weightParts(readings.midNetN, units);
}

/** What the third number does not say by itself: which breath it is judged at, or what holds up who floats. */
export function besideWeight(readings: Readings): string {
  if (readings.place !== 'afloat') return readings.judged === 'mid-breath' ? 'at mid-breath' : '';
  const most = [...readings.up].sort((a, b) => b.kg - a.kg)[0];
  return most ? `held up by the ${most.name}${readings.up.length > 1 ? ' most' : ''}` : '';
}

/**
 * The moment as a sentence for those who hear it: "8.2 m, rising 4 m/min, 0.3 kg light". Where a lesson hides gauges it says what the
 * water still shows: where the diver is, and which way he goes.
 * @param weighed false where what he weighs would answer what is asked
 */
export function spoken(readings: Readings, units: Units, gauges: Gauges = 'all', weighed = true): string {
  const rate = rateParts(readings.speedMps, units);
  const weight = weightWords(readings, units);
  const rateWords = [rate.word, ...(gauges === 'none' ? [] : [rate.number, rate.unit])].filter(Boolean).join(' ');
  const weightText = weight.amount ? `${weight.amount} ${weight.word}` : weight.word;
  const place = readings.place.startsWith('on ') ? `, ${readings.place}` : '';
  const alsoWeight = gauges === 'all' && weighed ? `, ${weightText}` : '';
  return `${depthText(readings.depthM, units)}, ${rateWords}${alsoWeight}${place}`;
}
