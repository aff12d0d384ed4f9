import { rigOf, type Rig, type Setup } from '../../src/diver/index.ts';
import { readSetup } from '../../src/diver/file.ts';
import { neutralLeadKg, type WeighingAt } from '../../src/insight/index.ts';

/** The documented example: temperate sea, 5 mm one-piece, 12 L steel, regulator, fins and mask; no lead. */
export const EXAMPLE: Setup = setupOf(`
suit: { kind: foam, cut: one-piece, thicknessMm: 5, areaM2: 1.35 }
cylinders: [{ material: steel, waterL: 12, emptyKg: 14.9, externalL: 13.9, workingBar: 232, fillBar: 200, o2Percent: 21 }]
other:
  - { name: regulator, massKg: 1.5, volumeL: 0.7 }
  - { name: fins and mask, massKg: 2.4, volumeL: 2.3 }
`);

/** A setup of keys written as in a file, every other key at its default. @throws {TypeError} when it has problems */
export function setupOf(keys: string): Setup {
  const read = readSetup(`format: 1${keys}`);
  if (!('setup' in read)) throw new TypeError(`setupOf: ${JSON.stringify(read.problems)}`);
  return read.setup;
}

/** A setup with groups of keys changed. */
export function changed(
  setup: Setup,
  groups: { readonly [Key in keyof Setup]?: Setup[Key] extends readonly unknown[] ? Setup[Key] : Partial<Setup[Key]> },
): Setup {
  const out: Record<string, unknown> = { ...setup };
  for (const [key, group] of Object.entries(groups))
    out[key] =
      Array.isArray(group) || typeof group !== 'object'
        ? group
        : { ...(setup[key as keyof Setup] as object), ...(group as object) };
  return out as unknown as Setup;
}

/** The rig of a setup with one piece of belt lead of this mass and no other lead. */
export function withLeadKg(setup: Setup, massKg: number): Rig {
  return rigOf({ ...setup, lead: [{ massKg, place: 'belt', releasable: true }] });
}

/** The rig of a setup, weighed: neutral at 5 m with 50 bar left unless said, and so much lead more. */
export function weighed(setup: Setup, surplusKg = 0, at?: WeighingAt): Rig {
  return withLeadKg(setup, neutralLeadKg(rigOf({ ...setup, lead: [] }), at) + surplusKg);
}
