import { rigOf, type LeadSetup, type Setup } from '../diver/index.ts';
import { neutralLeadKg } from '../insight/index.ts';

/** The largest piece on a belt, kilograms. Practice. */
const PIECE_KG = 2;
/** Below this, kilograms, a piece is no piece. */
const LEAST_KG = 0.005;

/** Lead that makes the diver of a setup neutral, kilograms: at 5 m with 50 bar left, jacket empty, half a breath in. */
export function neededKg(setup: Setup): number {
  return neutralLeadKg(rigOf(setup));
}

/** Lead that a setup carries, kilograms. */
export function carriedKg(setup: Setup): number {
  return setup.lead.reduce((kg, piece) => kg + piece.massKg, 0);
}

/**
 * The same setup with another sum of lead, never below 0: what cannot be let go stays as long as it can, the rest is on the
 * belt in pieces of two kilograms and one smaller.
 */
export function carrying(setup: Setup, wantedKg: number): Setup {
  const kg = Math.max(0, wantedKg);
  if (Math.abs(kg - carriedKg(setup)) < LEAST_KG) return setup;
  const fixed = setup.lead.filter((piece) => !piece.releasable);
  const fixedKg = fixed.reduce((sum, piece) => sum + piece.massKg, 0);
  if (kg < fixedKg)
    return { ...setup, lead: fixed.map((piece) => ({ ...piece, massKg: (piece.massKg * kg) / fixedKg })) };
  const belt: LeadSetup[] = [];
  for (let left = kg - fixedKg; left > LEAST_KG; left -= PIECE_KG)
    belt.push({ massKg: Math.min(left, PIECE_KG), place: 'belt', releasable: true });
  return { ...setup, lead: [...belt, ...fixed] };
}
