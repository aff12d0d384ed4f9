import { rigOf, type BodySetup, type Setup, type SuitSetup } from '../diver/index.ts';
import { cylindersName, otherCylinders, otherSuits, plain, suitName } from './usual-kit.ts';
import { otherAltitudes, otherWaters, type Named } from './usual-waters.ts';
import { USUAL_WEIGHING, leadKgWith, neutralLeadKg, weighedAt, type WeighingAt } from './weigh.ts';

/** What one change to a setup does to the lead that makes it neutral: the model's number, no advice. */
export interface LeadChange {
  /** In plain words, such as "fresh water instead of sea water". */
  readonly change: string;
  readonly group: 'water' | 'suit' | 'thickness' | 'cylinder' | 'gas used' | 'body' | 'undergarment';
  readonly leadKg: number;
  /** What that is more than without the change. */
  readonly deltaKg: number;
  /** The changed setup, its own lead as it was. Where only the weighing differs, the setup as given. */
  readonly setup: Setup;
}

/**
 * The lead of a setup after each of the usual changes, one at a time: water, suit, its thickness, cylinder, gas used, body,
 * undergarment. What is no change for this setup is left out, as is whatever a setup file would not be allowed.
 * @throws {RangeError} as {@link neutralLeadKg}
 */
export function leadChanges(setup: Setup, at: WeighingAt = USUAL_WEIGHING): LeadChange[] {
  const beforeKg = neutralLeadKg(rigOf(setup), at);
  const rows = (group: LeadChange['group'], changes: readonly Named[]): LeadChange[] =>
    changes.map(({ change, setup: changed }) => {
      const leadKg = neutralLeadKg(rigOf(changed), at);
      return { change, group, leadKg, deltaKg: leadKg - beforeKg, setup: changed };
    });
  return [
    ...rows('water', [...otherWaters(setup), ...otherAltitudes(setup)]),
    ...rows('suit', suitChanges(setup)),
    ...rows('thickness', thicknesses(setup)),
    ...rows('cylinder', cylinderChanges(setup)),
    ...gasUsed(setup, at, beforeKg),
    ...rows('body', [...bodies(setup), ...largerLungs(setup, at)]),
    ...rows('undergarment', undergarments(setup)),
  ];
}

function suitChanges(setup: Setup): Named[] {
  return otherSuits(setup).map((suit) => wearing(setup, suit, `${suitName(suit)} instead of ${suitName(setup.suit)}`));
}

function wearing(setup: Setup, suit: SuitSetup, change: string): Named {
  return { change, setup: { ...setup, suit } };
}

/** The thickest foam that a setup file may have, millimetres. */
const THICKEST_MM = 12;

function thicknesses(setup: Setup): Named[] {
  const { suit } = setup;
  if (suit.kind === 'none' || suit.thicknessMm === 0) return [];
  return [suit.thicknessMm + 1, suit.thicknessMm - 1]
    .filter((thicknessMm) => thicknessMm > 0 && thicknessMm <= THICKEST_MM)
    .map((thicknessMm) =>
      wearing(
        setup,
        { ...suit, thicknessMm },
        `suit 1 mm ${thicknessMm > suit.thicknessMm ? 'thicker' : 'thinner'}: ${plain(thicknessMm)} mm`,
      ),
    );
}

/** On a closed loop the cylinder holds the diluent, which is another kind of choice. */
function cylinderChanges(setup: Setup): Named[] {
  if (setup.apparatus === 'loop') return [];
  return otherCylinders(setup).map((cylinders) => ({
    change: `${cylindersName(cylinders)} instead of ${cylindersName(setup.cylinders)}`,
    setup: { ...setup, cylinders },
  }));
}

function gasUsed(setup: Setup, at: WeighingAt, beforeKg: number): LeadChange[] {
  const fills = setup.cylinders.map(({ fillBar }) => fillBar);
  if (fills.every((fillBar) => fillBar === at.reserveBar)) return [];
  const { cylinderBar, ...asFilled } = weighedAt(at);
  const leadKg = leadKgWith(rigOf(setup), at.depthM, asFilled);
  const full = fills.every((fillBar) => fillBar === fills[0]) ? `${plain(fills[0]!)} bar, as filled,` : 'as filled';
  return [
    {
      change: `weighed with ${full} instead of ${plain(cylinderBar!)} bar left`,
      group: 'gas used',
      leadKg,
      deltaKg: leadKg - beforeKg,
      setup,
    },
  ];
}

/** Body mass and share of fat that a setup file may have, and body mass per height squared, kg/m². */
const MASSES_KG = [25, 250] as const;
const FATS_PERCENT = [3, 70] as const;
const BUILDS_KG_PER_M2 = [9, 90] as const;

function bodies(setup: Setup): Named[] {
  const { massKg, bodyFatPercent: fat, heightCm } = setup.diver;
  const isIn = (value: number, [least, most]: readonly [number, number]) => value >= least && value <= most;
  const isBuild = (kg: number) => isIn(kg, MASSES_KG) && isIn(kg / (heightCm / 100) ** 2, BUILDS_KG_PER_M2);
  return [
    ...[massKg + 10, massKg - 10]
      .filter(isBuild)
      .map((kg) =>
        bodied(
          setup,
          { massKg: kg },
          `body of ${plain(kg)} kg instead of ${plain(massKg)}, the same share of fat, the same suit`,
        ),
      ),
    ...[fat + 5, fat - 5]
      .filter((percent) => isIn(percent, FATS_PERCENT))
      .map((percent) =>
        bodied(
          setup,
          { bodyFatPercent: percent },
          `body fat of ${plain(percent)} % instead of ${plain(fat)}, the same mass`,
        ),
      ),
  ];
}

function bodied(setup: Setup, body: Partial<BodySetup>, change: string): Named {
  return { change, setup: { ...setup, diver: { ...setup.diver, ...body } } };
}

/** How much larger the lungs of a larger chest are. Chosen. */
const LARGER = 1.2;

/** Lungs do not count where their volume is said, nor on a closed loop. A breath stays as deep as it was. */
function largerLungs(setup: Setup, at: WeighingAt): Named[] {
  if (setup.apparatus === 'loop' || at.lungM3 !== undefined) return [];
  const { residualM3, totalM3, endExpiratoryM3 } = rigOf(setup).lungs;
  const { sex, ageYears, ...diver } = setup.diver;
  const litres = (volumeM3: number) => volumeM3 * 1e3 * LARGER;
  return [
    {
      change: 'lungs a fifth larger',
      setup: {
        ...setup,
        diver: {
          ...diver,
          residualL: litres(residualM3),
          totalLungL: litres(totalM3),
          endExpiratoryL: litres(endExpiratoryM3),
        },
      },
    },
  ];
}

/** Least loft is what weighs: how far an undergarment can be squeezed, half as far more or less. */
function undergarments(setup: Setup): Named[] {
  const { suit } = setup;
  if (suit.kind !== 'drysuit') return [];
  return [
    ['thicker', 1.5],
    ['thinner', 0.5],
  ].flatMap(([word, share]) => {
    const [minimumLoftL, undergarmentL] = [suit.minimumLoftL * Number(share), suit.undergarmentL * Number(share)];
    if (minimumLoftL < 0.1 || minimumLoftL > 25 || undergarmentL > Math.min(suit.capacityL, 30)) return [];
    const change = `${word} undergarment: least loft of ${plain(minimumLoftL)} L instead of ${plain(suit.minimumLoftL)}`;
    return [wearing(setup, { ...suit, minimumLoftL, undergarmentL }, change)];
  });
}
