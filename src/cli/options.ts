import { midBreathM3, type Rig } from '../diver/index.ts';
import { UsageError, within, type Asked, type Option } from './usage.ts';

/** Options that several commands share. */
export const LUNGS: Option = { kind: 'number', least: 0, most: 12, says: 'litres in the lungs; left out: mid-breath' };
export const EVERY: Option = { kind: 'number', least: 0.1, most: 21600, says: 'seconds between samples; left out: 10' };

/** The deepest that a question may be about, metres. */
export const DEEPEST_M = 150;

/**
 * The lungs asked for, m³, or undefined when they were not.
 * @throws {UsageError} when no chest of this setup holds them, or the setup is a closed loop, where breathing changes no volume
 */
export function lungsM3(asked: Asked, rig: Rig): number | undefined {
  const litres = asked.numbers['lungs'];
  if (litres === undefined) return undefined;
  if (!rig.lungs.open)
    throw new UsageError('--lungs: not on a closed loop, where lungs and counterlung are one volume; leave it out');
  const { residualM3, totalM3 } = rig.lungs;
  within('--lungs', litres, residualM3 * 1e3, totalM3 * 1e3, 'the smallest and the largest lungs of this setup');
  return litres * 1e-3;
}

/** Litres in the lungs that a command reckons with, for its result; null on a closed loop. */
export function lungsShownL(rig: Rig, wishedM3: number | undefined): number | null {
  return rig.lungs.open ? litres(wishedM3 ?? midBreathM3(rig)) : null;
}

/** Cubic metres as litres. */
export function litres(volumeM3: number): number {
  return volumeM3 * 1e3;
}
