import type { BenchAsk, BenchDial } from './desk.ts';
import type { MaterialId } from './materials.ts';
import { PUTTY_RANGES } from './putty.ts';
import { THING_RANGES, type ThingSpec } from './thing.ts';

/** What is asked of the thing that is chosen. */
export type ThingAsk = Extract<BenchAsk, { do: 'shape' | 'dial' | 'material' }>;

/** A thing with another shape, size or stuff; what it does not have is left alone. */
export function changedSpec(spec: ThingSpec, ask: ThingAsk): ThingSpec {
  if (ask.do === 'shape') return spec.kind === 'putty' ? { ...spec, shape: ask.shape } : spec;
  if (ask.do === 'material') return withMaterial(spec, ask.material);
  const { id, value } = ask;
  if (id === 'mass' && (spec.kind === 'putty' || spec.kind === 'stone' || spec.kind === 'odd-stone'))
    return { ...spec, massKg: value };
  if (id === 'wall' && spec.kind === 'can') return { ...spec, wallM: value };
  if ((id === 'width' || id === 'height') && (spec.kind === 'can' || spec.kind === 'block'))
    return { ...spec, [`${id}M`]: value };
  if ((id === 'flatness' || id === 'hollow' || id === 'square') && spec.kind === 'putty')
    return { ...spec, shape: { ...spec.shape, [id]: value } };
  return spec;
}

function withMaterial(spec: ThingSpec, material: MaterialId): ThingSpec {
  return spec.kind === 'block' || spec.kind === 'odd-stone' ? { ...spec, material } : spec;
}

/** What can be set of a thing. */
export function dialsOf(spec: ThingSpec): BenchDial[] {
  const size = (id: 'width' | 'height', value: number): BenchDial => {
    const [least, most] = [THING_RANGES.sizeM[0], id === 'width' ? 0.3 : 0.2];
    return { id, value, least, most, step: 0.005 };
  };
  const mass = (value: number, most: number): BenchDial => ({ id: 'mass', value, least: 0.05, most, step: 0.01 });
  switch (spec.kind) {
    case 'putty': {
      const part = (id: 'flatness' | 'hollow' | 'square'): BenchDial => {
        const [least, most] = PUTTY_RANGES[id];
        return { id, value: spec.shape[id], least, most, step: (most - least) / 100 };
      };
      return [part('flatness'), part('hollow'), part('square'), mass(spec.massKg, 1)];
    }
    case 'stone':
    case 'odd-stone':
      return [mass(spec.massKg, 2)];
    case 'block':
      return [size('width', spec.widthM), size('height', spec.heightM)];
    case 'can': {
      const wall = { id: 'wall', value: spec.wallM, least: 0.0005, most: 0.012, step: 0.0005 } as const;
      return [wall, size('width', spec.widthM), size('height', spec.heightM)];
    }
  }
}
