import type { RuleBreak } from './rule-break.ts';
import type { GivenSetup } from './setup-schema.ts';
import type { LayerSetup, WaterSetup } from './setup.ts';

/** Rules between the keys of the water. */
export function waterRules({ water: given = {} }: GivenSetup, water: WaterSetup): RuleBreak[] {
  const broken: RuleBreak[] = [];
  for (const other of ['salinityPsu', 'layers'] as const)
    if (given.densityKgPerM3 !== undefined && given[other] !== undefined)
      broken.push({
        at: [
          ['water', 'densityKgPerM3'],
          ['water', other],
        ],
        found: `densityKgPerM3 together with ${other}`,
        allowed: 'densityKgPerM3 alone, or salinityPsu, or layers',
        suggestion: `Delete densityKgPerM3 or ${other}`,
      });
  if (given.surfacePressureBar !== undefined && given.altitudeM !== undefined)
    broken.push({
      at: [
        ['water', 'surfacePressureBar'],
        ['water', 'altitudeM'],
      ],
      found: 'surfacePressureBar together with altitudeM',
      allowed: 'one of the two',
      suggestion: 'Delete surfacePressureBar or altitudeM',
    });
  if (water.ledgeM !== undefined && !(water.ledgeM < water.bottomM))
    broken.push({
      at: [
        ['water', 'ledgeM'],
        ['water', 'bottomM'],
      ],
      found: `a ledge at ${water.ledgeM} m over a bottom at ${water.bottomM} m`,
      allowed: 'a ledge above the bottom',
      suggestion: `Write a ledgeM smaller than ${water.bottomM}, or a larger bottomM`,
    });
  return [...broken, ...layerRules(water.layers ?? [])];
}

function layerRules(layers: readonly LayerSetup[]): RuleBreak[] {
  const broken: RuleBreak[] = [];
  let mixedToM = 0;
  layers.forEach((layer, i) => {
    const at = (key: keyof LayerSetup) => ['water', 'layers', i, key];
    const before = layers[i - 1];
    const half = layer.mixingM / 2;
    if (!before) {
      if (layer.fromM !== 0)
        broken.push({
          at: [at('fromM')],
          found: `a first layer from ${layer.fromM} m`,
          allowed: 'a first layer from 0 m, the surface',
          suggestion: 'Write fromM: 0',
        });
      if (layer.mixingM !== 0)
        broken.push({
          at: [at('mixingM')],
          found: `mixingM ${layer.mixingM} in the first layer`,
          allowed: 'no mixing at the surface: mixingM belongs to the layer whose upper edge it blurs',
          suggestion: 'Delete mixingM here',
        });
      return;
    }
    if (layer.fromM <= before.fromM)
      broken.push({
        at: [at('fromM')],
        found: `a layer from ${layer.fromM} m after one from ${before.fromM} m`,
        allowed: 'layers from the surface down',
        suggestion: `Write a fromM larger than ${before.fromM}, or put the layers in order`,
      });
    else if (layer.fromM - half < mixedToM)
      broken.push({
        at: [at('mixingM'), at('fromM')],
        found: `mixing from ${layer.fromM - half} m where the water above is mixed or ends at ${mixedToM} m`,
        allowed: 'mixing zones that do not overlap and stay below the surface',
        suggestion: `Write mixingM: ${2 * Math.max(0, layer.fromM - mixedToM)} or less`,
      });
    mixedToM = layer.fromM + half;
  });
  return broken;
}
