import type { RuleBreak } from './rule-break.ts';
import { diverRules } from './setup-rules-diver.ts';
import { jacketRules, loopRules, suitRules } from './setup-rules-gas.ts';
import { cylinderRules, gearRules } from './setup-rules-gear.ts';
import { waterRules } from './setup-rules-water.ts';
import type { GivenSetup } from './setup-schema.ts';
import type { Setup } from './setup.ts';

/**
 * Every break of the rules between keys, in the order of the file.
 * @param given what the file gives
 * @param setup the same, completed
 */
export function ruleBreaks(given: GivenSetup, setup: Setup): RuleBreak[] {
  return [
    ...waterRules(given, setup.water),
    ...diverRules(setup.diver),
    ...suitRules(setup.suit),
    ...jacketRules(setup.jacket),
    ...cylinderRules(setup.cylinders),
    ...gearRules(setup.other),
    ...loopRules(given, setup.loop),
  ];
}
