import { atMost, type RuleBreak } from './rule-break.ts';
import type { GivenSetup } from './setup-schema.ts';
import type { JacketSetup, LoopSetup, SuitSetup } from './setup.ts';

/** Rules between the keys of the suit. */
export function suitRules(suit: SuitSetup): RuleBreak[] {
  if (suit.kind !== 'drysuit') return [];
  const path = ['suit'];
  const broken = [
    ...atMost(suit, path, 'gasL', 'capacityL'),
    ...atMost(suit, path, 'minimumLoftL', 'capacityL'),
    ...atMost(suit, path, 'minimumLoftL', 'undergarmentL'),
    ...atMost(suit, path, 'undergarmentL', 'capacityL'),
  ];
  if (suit.shell === 'membrane' && suit.thicknessMm > 0)
    broken.push({
      at: [
        ['suit', 'thicknessMm'],
        ['suit', 'shell'],
      ],
      found: `thicknessMm ${suit.thicknessMm} with a membrane shell`,
      allowed: 'thicknessMm 0 for a membrane: it has no foam',
      suggestion: 'Delete thicknessMm, or write shell: foam',
    });
  return broken;
}

/** Rules between the keys of the jacket. */
export function jacketRules(jacket: JacketSetup): RuleBreak[] {
  return [...atMost(jacket, ['jacket'], 'gasL', 'capacityL'), ...atMost(jacket, ['jacket'], 'residualL', 'capacityL')];
}

/** Rules of the loop: only with the apparatus that has one, and with room above the least volume. */
export function loopRules(given: GivenSetup, loop: LoopSetup | undefined): RuleBreak[] {
  if (!loop)
    return given.loop === undefined
      ? []
      : [
          {
            at: [['loop'], ['apparatus']],
            found: 'a loop with apparatus open',
            allowed: 'loop only with apparatus: loop',
            suggestion: 'Write apparatus: loop, or delete loop',
          },
        ];
  const broken = atMost(loop, ['loop'], 'gasL', 'capacityL');
  if (loop.minimumL >= loop.capacityL)
    broken.push({
      at: [
        ['loop', 'minimumL'],
        ['loop', 'capacityL'],
      ],
      found: `minimumL ${loop.minimumL} with capacityL ${loop.capacityL}`,
      allowed: 'minimumL below capacityL',
      suggestion: `Write a minimumL of about ${loop.capacityL / 2}`,
    });
  return broken;
}
