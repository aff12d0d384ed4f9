import { instantOf } from './instant.ts';
import { ledger } from './ledger.ts';
import { rigOf } from './rig.ts';
import { round, type RuleBreak } from './rule-break.ts';
import { shortened } from './problems.ts';
import type { CylinderSetup, GearSetup, Setup } from './setup.ts';

/** Filling pressure over working pressure that a file may give. Common practice, no source. */
const MOST_FILLING = 1.1;
/** Mass of a cylinder's wall per litre of it, valve and boot included, with wide room around any metal, kg/L. Practice. */
const WALL_KG_PER_L = { least: 1.5, most: 15 };
/** Mass per volume of diver and kit together, kg/L: beyond these some number is mistaken. Common practice, no source. */
const WHOLE_KG_PER_L = { least: 0.6, most: 1.6 };
/** Part ids of the force ledger, which other gear cannot be called. */
const PARTS = ['tissue', 'gut', 'lungs', 'suit', 'suit-gas', 'jacket', 'jacket-gas', 'loop', 'above-water'];
const NUMBERED_PART = /^(?:cylinder|lead)-/;

/** Rules between the keys of each cylinder. */
export function cylinderRules(cylinders: readonly CylinderSetup[]): RuleBreak[] {
  return cylinders.flatMap((cylinder, i) => [...fillingRule(cylinder, i), ...wallRule(cylinder, i)]);
}

function fillingRule({ fillBar, workingBar }: CylinderSetup, i: number): RuleBreak[] {
  const most = workingBar * MOST_FILLING;
  if (fillBar <= most + 1e-9) return [];
  return [
    {
      at: [
        ['cylinders', i, 'fillBar'],
        ['cylinders', i, 'workingBar'],
      ],
      found: `fillBar ${fillBar} with workingBar ${workingBar}`,
      allowed: `fillBar at most a tenth above workingBar, ${round(most)}`,
      suggestion: `Write fillBar: ${workingBar} or less, or the cylinder's own workingBar`,
    },
  ];
}

function wallRule({ waterL, externalL, emptyKg }: CylinderSetup, i: number): RuleBreak[] {
  const at = (key: keyof CylinderSetup) => ['cylinders', i, key];
  if (externalL <= waterL)
    return [
      {
        at: [at('externalL'), at('waterL')],
        found: `externalL ${externalL} with waterL ${waterL}`,
        allowed: 'externalL above waterL: the wall takes room',
        suggestion: `Write externalL of about ${round(waterL + emptyKg / 7.8)} for steel, ${round(waterL + emptyKg / 2.8)} for aluminium`,
      },
    ];
  const wall = emptyKg / (externalL - waterL);
  if (wall >= WALL_KG_PER_L.least && wall <= WALL_KG_PER_L.most) return [];
  return [
    {
      at: [at('emptyKg'), at('externalL'), at('waterL')],
      found: `${emptyKg} kg in ${round(externalL - waterL)} L of wall`,
      allowed: `${WALL_KG_PER_L.least} to ${WALL_KG_PER_L.most} kg in each litre between waterL and externalL`,
      suggestion: 'Write waterL, emptyKg and externalL of the same cylinder',
    },
  ];
}

/** Rules of other gear: names that tell the parts of the force ledger apart. */
export function gearRules(other: readonly GearSetup[]): RuleBreak[] {
  const seen = new Map<string, number>();
  return other.flatMap(({ name }, i) => {
    const word = name.toLowerCase();
    const before = seen.get(word);
    seen.set(word, before ?? i);
    const reserved = PARTS.includes(word) || NUMBERED_PART.test(word);
    if (!reserved && before === undefined) return [];
    return [
      {
        at: [['other', i, 'name']],
        found: reserved ? `the name ${name}, that of a part` : `the name ${shortened(name)} a second time`,
        allowed: reserved ? `names other than ${PARTS.join(', ')}, cylinder-1…, lead-1…` : 'a name of its own for each',
        suggestion: reserved
          ? 'Write what it is, such as "regulator"'
          : `Write "${shortened(name)} two", or put both into one`,
      },
    ] satisfies RuleBreak[];
  });
}

/**
 * The last rule, of a setup that breaks no other: diver and kit together, at 5 m, must be something that can be in water.
 * @throws {RangeError} when another rule is broken
 */
export function wholeRule(setup: Setup): RuleBreak[] {
  const rig = rigOf(setup);
  let massKg = 0;
  let volumeL = 0;
  for (const part of ledger(rig, instantOf(rig, { depthM: 5 }))) {
    massKg += part.massKg;
    volumeL += part.volumeM3 * 1000;
  }
  const whole = massKg / volumeL;
  if (whole >= WHOLE_KG_PER_L.least && whole <= WHOLE_KG_PER_L.most) return [];
  return [
    {
      at: [whole < WHOLE_KG_PER_L.least ? ['other'] : ['lead'], ['cylinders'], ['diver'], ['suit'], ['jacket']],
      found: `diver and kit of ${round(massKg)} kg in ${round(volumeL)} L`,
      allowed: `${WHOLE_KG_PER_L.least} to ${WHOLE_KG_PER_L.most} kg a litre in all`,
      suggestion: 'Look for a mass or a volume that is ten times too large',
    },
  ];
}
