import { rigOf, type LeadSetup, type Setup } from '../diver/index.ts';
import { neutralLeadKg } from '../insight/index.ts';

/** The largest piece on a belt, kilograms. Practice. */
const PIECE_KG = 2;
/** The most that is carried here, kilograms: more fits no belt, and no list of pieces. */
const MOST_KG = 40;
/** Below this, kilograms, a difference comes of rounding. */
const ROUNDING_KG = 1e-9;

/** Lead that makes the diver of a setup neutral, kilograms: at 5 m with 50 bar left, jacket empty, half a breath in. */
export function neededKg(setup: Setup): number {
  return neutralLeadKg(rigOf(setup));
}

/** Lead that a setup carries, kilograms. */
export function carriedKg(setup: Setup): number {
  return setup.lead.reduce((kg, piece) => kg + piece.massKg, 0);
}

/**
 * The same setup with another sum of lead, from none to 40 kg: what cannot be let go stays as long as it can, the rest is on the
 * belt in equal pieces of two kilograms at most.
 */
export function carrying(setup: Setup, wantedKg: number): Setup {
  const kg = Math.min(Math.max(0, wantedKg), MOST_KG);
  if (Math.abs(kg - carriedKg(setup)) < ROUNDING_KG) return setup;
  const fixed = setup.lead.filter((piece) => !piece.releasable);
  const fixedKg = fixed.reduce((sum, piece) => sum + piece.massKg, 0);
  if (kg < fixedKg)
    return { ...setup, lead: fixed.map((piece) => ({ ...piece, massKg: (piece.massKg * kg) / fixedKg })) };
  const pieces = Math.ceil((kg - fixedKg) / PIECE_KG);
  const piece: LeadSetup = { massKg: (kg - fixedKg) / pieces, place: 'belt', releasable: true };
  return { ...setup, lead: [...Array.from({ length: pieces }, () => piece), ...fixed] };
}
