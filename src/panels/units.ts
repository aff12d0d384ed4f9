import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import type { Units } from './settings.ts';

/** Length of a foot, metres, and mass of a pound, kilograms. @source international yard and pound agreement 1959, recalled */
export const FOOT_M = 0.3048;
export const POUND_KG = 0.45359237;
/** Pressure of a pound-force on a square inch, pascals. @source pound of 1959, standard gravity and an inch of 25.4 mm, derived */
export const PSI_PA = (POUND_KG * STANDARD_GRAVITY_MPS2) / 0.0254 ** 2;
/** Slower than this, m/s, nobody speaks of rising or sinking: half a metre a minute. */
export const STILL_MPS = 0.5 / 60;
/** Within this a diver is neutral, kilograms of pull. */
export const NEUTRAL_KG = 0.1;

/** A depth: "8.0 m" or "26 ft". A depth above the surface is written as 0. */
export function depthText(depthM: number, units: Units): string {
  const shown = Math.max(0, depthM);
  return units === 'metric' ? `${shown.toFixed(1)} m` : `${Math.round(shown / FOOT_M)} ft`;
}

/** A vertical speed with its word: "sinking", "4", "m/min"; still has no number. */
export function rateParts(speedMps: number, units: Units): { word: string; number: string; unit: string } {
  const unit = units === 'metric' ? 'm/min' : 'ft/min';
  const perMinute = (Math.abs(speedMps) * 60) / (units === 'metric' ? 1 : FOOT_M);
  if (Math.abs(speedMps) < STILL_MPS) return { word: 'still', number: '', unit: '' };
  return { word: speedMps > 0 ? 'sinking' : 'rising', number: String(Math.round(perMinute)), unit };
}

/** A net force, up positive, as light, heavy or neutral with its kilograms of pull. */
export function weightParts(netN: number, units: Units): { word: 'light' | 'heavy' | 'neutral'; amount: string } {
  const kg = Math.abs(netN) / STANDARD_GRAVITY_MPS2;
  if (kg <= NEUTRAL_KG) return { word: 'neutral', amount: '' };
  return { word: netN > 0 ? 'light' : 'heavy', amount: massText(kg, units) };
}

/** A mass: "0.3 kg" or "0.7 lb". */
export function massText(massKg: number, units: Units): string {
  return `${inMass(massKg, units).toFixed(1)} ${units === 'metric' ? 'kg' : 'lb'}`;
}

/** By how much one mass is more than another, as both are written: 10.9 kg less 9.1 kg are 1.8 kg. Kilograms, and with its sign. */
export function massApartKg(massKg: number, otherKg: number, units: Units): number {
  const [one, other] = [massKg, otherKg].map((kg) => Math.round(inMass(kg, units) * 10));
  return ((one! - other!) / 10) * (units === 'metric' ? 1 : POUND_KG);
}

function inMass(massKg: number, units: Units): number {
  return units === 'metric' ? massKg : massKg / POUND_KG;
}

/** Kilograms of pull of a force. */
export function pullKg(forceN: number): number {
  return forceN / STANDARD_GRAVITY_MPS2;
}

/** A gas volume in litres, which both systems use for lungs and jacket: "3.6 L". */
export function litresText(volumeM3: number): string {
  return `${(volumeM3 * 1e3).toFixed(1)} L`;
}

/** What is in a cylinder, by its gauge: "50 bar" or "725 psi". */
export function gaugeText(bar: number, units: Units): string {
  return units === 'metric' ? `${bar} bar` : `${Math.round((bar * 1e5) / PSI_PA)} psi`;
}

/** A moment of a dive: "1:05". */
export function timeText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
