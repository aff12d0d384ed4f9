import { bodySurfaceM2 } from './body.ts';
import { PLACES, type Place } from './places.ts';
import type { GivenSetup } from './setup-schema.ts';
import {
  DRYSUIT,
  DRYSUIT_SHELLS,
  FOAM_SUIT,
  SHOWN_BODY,
  SHOWN_CYLINDER,
  SHOWN_HYDRODYNAMICS,
  SHOWN_JACKET,
  SHOWN_LOOP,
  SHOWN_WATER,
} from './setup-shown.ts';
import type { BodySetup, CylinderSetup, GearSetup, LeadSetup, Setup, SuitSetup, WaterSetup } from './setup.ts';

/** Suit area as a share of the body surface: a one-piece leaves head, hands and feet bare, a two-piece overlaps itself. */
const ONE_PIECE_SHARE = 0.7;
const TWO_PIECE_SHARE = 1.1;

type Given<Key extends keyof GivenSetup> = NonNullable<GivenSetup[Key]>;

/** The setup that a file gives, with every left-out key filled in. */
export function completed(given: GivenSetup): Setup {
  const diver: BodySetup = { ...SHOWN_BODY, ...given.diver };
  const apparatus = given.apparatus ?? 'open';
  return {
    format: 1,
    name: given.name ?? 'Temperate sea, 5 mm one-piece, 12 L steel',
    ...(given.note === undefined ? {} : { note: given.note }),
    water: waterOf(given.water ?? {}),
    diver,
    suit: suitOf(given.suit ?? {}, diver),
    jacket: { ...SHOWN_JACKET, ...given.jacket },
    cylinders: (given.cylinders ?? [{}]).map(cylinderOf),
    lead: (given.lead ?? []).map(leadOf),
    other: (given.other ?? []).map(gearOf),
    apparatus,
    ...(apparatus === 'loop' ? { loop: { ...SHOWN_LOOP, ...given.loop } } : {}),
    hydrodynamics: { ...SHOWN_HYDRODYNAMICS, ...given.hydrodynamics },
  };
}

function waterOf(given: Given<'water'>): WaterSetup {
  const { layers, ...rest } = given;
  const water = { ...SHOWN_WATER, ...rest };
  const { salinityPsu, temperatureC } = water;
  return layers
    ? { ...water, layers: layers.map((layer) => ({ salinityPsu, temperatureC, mixingM: 0, ...layer })) }
    : water;
}

function suitOf(given: Given<'suit'>, diver: BodySetup): SuitSetup {
  if (given.kind === 'none') return { kind: 'none' };
  const bodyM2 = bodySurfaceM2(diver.massKg, diver.heightCm);
  if (given.kind === 'drysuit') {
    const shell = given.shell ?? 'membrane';
    return { shell, areaM2: ONE_PIECE_SHARE * bodyM2, ...DRYSUIT, ...DRYSUIT_SHELLS[shell], ...given };
  }
  const cut = given.cut ?? 'one-piece';
  const areaM2 = (cut === 'one-piece' ? ONE_PIECE_SHARE : TWO_PIECE_SHARE) * bodyM2;
  return { cut, areaM2, ...FOAM_SUIT, ...given, kind: 'foam' };
}

function cylinderOf(given: Given<'cylinders'>[number]): CylinderSetup {
  const material = given.material ?? 'steel';
  return { material, ...SHOWN_CYLINDER[material], ...given };
}

/** Lead on a belt or in a pocket can be let go unless the file says otherwise; on the back or an ankle it cannot. */
function leadOf(given: Given<'lead'>[number]): LeadSetup {
  const place = given.place ?? 'belt';
  return { place, releasable: place === 'belt' || place === 'pocket', ...given };
}

function gearOf(given: Given<'other'>[number]): GearSetup {
  const place: Place = /\bfins?\b/i.test(given.name) ? PLACES.fins : { headwardM: 0, backwardM: 0 };
  return { ...place, ...given };
}
