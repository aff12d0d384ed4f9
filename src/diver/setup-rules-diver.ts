import { IMMERSED_END_EXPIRATORY_SHARE, IMMERSED_TOTAL_SHARE, dryLungVolumesL } from './body.ts';
import { round, type RuleBreak } from './rule-break.ts';
import type { BodySetup } from './setup.ts';

/** Heights that the reference equations of lung size are used for, cm. @source Hall et al. 2021, as in the equations */
const EQUATION_HEIGHTS_CM = { least: 130, most: 210 };
/** Body mass per height squared that a person can have, kg/m², with room on both sides. Common practice, no source. */
const BUILD_KG_PER_M2 = { least: 9, most: 90 };

/** Rules between the keys of the diver's body. */
export function diverRules(diver: BodySetup): RuleBreak[] {
  return [...lungRules(diver), ...breathRule(diver), ...equationRules(diver), ...buildRule(diver)];
}

function lungRules({ residualL, endExpiratoryL, totalLungL }: BodySetup): RuleBreak[] {
  const broken: RuleBreak[] = [];
  if (residualL >= totalLungL)
    broken.push({
      at: [
        ['diver', 'residualL'],
        ['diver', 'totalLungL'],
      ],
      found: `residualL ${residualL} with totalLungL ${totalLungL}`,
      allowed: 'residualL below totalLungL',
      suggestion: `Write a residualL of about ${round(totalLungL / 4)}`,
    });
  if (residualL >= endExpiratoryL)
    broken.push({
      at: [
        ['diver', 'endExpiratoryL'],
        ['diver', 'residualL'],
      ],
      found: `endExpiratoryL ${endExpiratoryL} with residualL ${residualL}`,
      allowed: 'endExpiratoryL above residualL: something is left to breathe out',
      suggestion: `Write an endExpiratoryL above ${residualL}`,
    });
  return broken;
}

/** An ordinary breath must fit between rest and full lungs. */
function breathRule(diver: BodySetup): RuleBreak[] {
  const { endExpiratoryL, totalLungL } = lungsInUse(diver);
  const room = totalLungL - endExpiratoryL;
  // Litres with one decimal are not exact in binary: 2.7 + 3.6 misses 6.3 by the last bit.
  if (diver.tidalL <= room + 1e-9) return [];
  return [
    {
      at: [
        ['diver', 'tidalL'],
        ['diver', 'endExpiratoryL'],
        ['diver', 'totalLungL'],
        ['diver', 'sex'],
      ],
      found: `a breath of ${diver.tidalL} L on top of ${round(endExpiratoryL)} L`,
      allowed: `endExpiratoryL and tidalL together at most the lungs' total of ${round(totalLungL)} L`,
      suggestion:
        room >= 0.2 ? `Write tidalL: ${Math.floor(room * 10) / 10} or less` : 'Write a smaller endExpiratoryL',
    },
  ];
}

/** What the equations give when the file asks for them and they apply, else what the file says. */
function lungsInUse(diver: BodySetup): { endExpiratoryL: number; totalLungL: number } {
  const { sex, ageYears, heightCm } = diver;
  if (sex === undefined || ageYears === undefined || !equationsCover(heightCm)) return diver;
  const dry = dryLungVolumesL(sex, ageYears, heightCm);
  return {
    endExpiratoryL: dry.functionalResidualL * IMMERSED_END_EXPIRATORY_SHARE,
    totalLungL: dry.totalL * IMMERSED_TOTAL_SHARE,
  };
}

function equationRules({ sex, ageYears, heightCm }: BodySetup): RuleBreak[] {
  if (sex === undefined && ageYears === undefined) return [];
  const broken: RuleBreak[] = [];
  if (sex === undefined || ageYears === undefined) {
    const [there, missing] = sex === undefined ? ['ageYears', 'sex: female or male'] : ['sex', 'ageYears'];
    broken.push({
      at: [['diver', there]],
      found: `${there} alone`,
      allowed: 'sex and ageYears together, or neither',
      suggestion: `Add ${missing}, or delete ${there}`,
    });
  }
  if (!equationsCover(heightCm))
    broken.push({
      at: [
        ['diver', 'heightCm'],
        ['diver', sex === undefined ? 'ageYears' : 'sex'],
      ],
      found: `heightCm ${heightCm} with lung sizes from reference equations`,
      allowed: `heightCm from ${EQUATION_HEIGHTS_CM.least} to ${EQUATION_HEIGHTS_CM.most} with sex and ageYears`,
      suggestion: 'Delete sex and ageYears, and write residualL, totalLungL and endExpiratoryL',
    });
  return broken;
}

function equationsCover(heightCm: number): boolean {
  return heightCm >= EQUATION_HEIGHTS_CM.least && heightCm <= EQUATION_HEIGHTS_CM.most;
}

function buildRule({ massKg, heightCm }: BodySetup): RuleBreak[] {
  const perM2 = massKg / (heightCm / 100) ** 2;
  if (perM2 >= BUILD_KG_PER_M2.least && perM2 <= BUILD_KG_PER_M2.most) return [];
  const least = Math.ceil(BUILD_KG_PER_M2.least * (heightCm / 100) ** 2);
  const most = Math.floor(BUILD_KG_PER_M2.most * (heightCm / 100) ** 2);
  return [
    {
      at: [
        ['diver', 'massKg'],
        ['diver', 'heightCm'],
      ],
      found: `massKg ${massKg} with heightCm ${heightCm}`,
      allowed: `massKg from ${least} to ${most} at this height`,
      suggestion: 'Check both numbers: kilograms without gas, and centimetres',
    },
  ];
}
