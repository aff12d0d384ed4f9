import {
  bodySurfaceM2,
  type CylinderSetup,
  type DrysuitSetup,
  type FoamSuitSetup,
  type Setup,
  type SuitSetup,
} from '../diver/index.ts';

/*
 * Kit that a diver may change to: sizes without a maker. The numbers are those that a setup file's left-out keys have and that
 * the ready setups use (the tests hold them together); what those lack is said beside it. Common practice, no source.
 */

/** Suit area as a share of the body surface, as where a setup file leaves the area out. */
const ONE_PIECE_SHARE = 0.7;
const TWO_PIECE_SHARE = 1.1;

const FOAM = { foamDensityKgPerM3: 300, gasFraction: 0.65, softness: 1 };
/** What no drysuit here differs in: its valves, and what it weighs and displaces beside its foam. */
const ANY_DRYSUIT = {
  kind: 'drysuit',
  capacityL: 40,
  inletLps: 2,
  exhaustLps: 2,
  crackKPa: 1,
  massKg: 4,
  volumeL: 3,
} as const;
const COMPRESSED_FOAM = { foamDensityKgPerM3: 500, gasFraction: 0.35, softness: 0.8 };
/** Each with the undergarment that it is worn with. No ready setup has the last: its undergarment lies between the others. */
const DRYSUITS: readonly Omit<DrysuitSetup, 'areaM2'>[] = [
  { shell: 'membrane', thicknessMm: 0, ...FOAM, undergarmentL: 6, minimumLoftL: 4, gasL: 8, ...ANY_DRYSUIT },
  { shell: 'foam', thicknessMm: 6, ...FOAM, undergarmentL: 4, minimumLoftL: 2.5, gasL: 6, ...ANY_DRYSUIT },
  {
    shell: 'compressed-foam',
    thicknessMm: 4,
    ...COMPRESSED_FOAM,
    undergarmentL: 5,
    minimumLoftL: 3,
    gasL: 7,
    ...ANY_DRYSUIT,
  },
];

const WETSUITS = [
  ['one-piece', 3],
  ['one-piece', 5],
  ['one-piece', 7],
  ['two-piece', 7],
] as const satisfies readonly (readonly [FoamSuitSetup['cut'], number])[];

/**
 * Every suit that the diver of a setup may change to, the one worn left out. A suit of foam keeps the foam that is worn; areas
 * keep to the area that is worn, in proportion 0.7 to 1.1 of one-piece and two-piece, or follow from the body.
 */
export function otherSuits({ suit, diver }: Setup): SuitSetup[] {
  const onePieceM2 = onePieceArea(suit, diver);
  const foam = suit.kind === 'foam' ? foamOf(suit) : FOAM;
  const suits: SuitSetup[] = [
    { kind: 'none' },
    ...WETSUITS.map(([cut, thicknessMm]): FoamSuitSetup => {
      const areaM2 = cut === 'one-piece' ? onePieceM2 : (onePieceM2 * TWO_PIECE_SHARE) / ONE_PIECE_SHARE;
      return { kind: 'foam', cut, thicknessMm, areaM2, ...foam };
    }),
    ...DRYSUITS.map((drysuit) => ({ ...drysuit, areaM2: onePieceM2 })),
  ];
  return suits.filter((other) => suitName(other) !== suitName(suit));
}

function onePieceArea(suit: SuitSetup, diver: Setup['diver']): number {
  if (suit.kind === 'none') return ONE_PIECE_SHARE * bodySurfaceM2(diver.massKg, diver.heightCm);
  const isTwo = suit.kind === 'foam' && suit.cut === 'two-piece';
  return isTwo ? (suit.areaM2 * ONE_PIECE_SHARE) / TWO_PIECE_SHARE : suit.areaM2;
}

function foamOf({ foamDensityKgPerM3, gasFraction, softness }: FoamSuitSetup): typeof FOAM {
  return { foamDensityKgPerM3, gasFraction, softness };
}

/** A suit in a few words, such as "5 mm one-piece". */
export function suitName(suit: SuitSetup): string {
  if (suit.kind === 'none') return 'no suit';
  return suit.kind === 'foam' ? `${plain(suit.thicknessMm)} mm ${suit.cut}` : `${suit.shell.replace('-', ' ')} drysuit`;
}

const STEEL = { material: 'steel', workingBar: 232, fillBar: 200 } as const;
const STEEL_12: Omit<CylinderSetup, 'o2Percent'> = { ...STEEL, waterL: 12, emptyKg: 14.9, externalL: 13.9 };
/** 10 and 15 L: body mass in common practice, external volume derived with steel of 7.85 kg/L and a valve of 0.9 kg, 0.11 L. */
const CYLINDERS: readonly (readonly Omit<CylinderSetup, 'o2Percent'>[])[] = [
  [{ ...STEEL, waterL: 10, emptyKg: 12.6, externalL: 11.6 }],
  [STEEL_12],
  [{ ...STEEL, waterL: 15, emptyKg: 17.9, externalL: 17.3 }],
  [{ material: 'aluminium', waterL: 11.1, emptyKg: 15.1, externalL: 16.5, workingBar: 207, fillBar: 200 }],
  [STEEL_12, STEEL_12],
];

/** Every set of cylinders that the diver of a setup may change to, the one worn left out; the gas in them stays the same. */
export function otherCylinders({ cylinders }: Setup): CylinderSetup[][] {
  const { o2Percent } = cylinders[0]!;
  return CYLINDERS.map((set) => set.map((cylinder) => ({ ...cylinder, o2Percent }))).filter(
    (set) => cylindersName(set) !== cylindersName(cylinders),
  );
}

/** A set of cylinders in a few words, such as "12 L steel" or "two 12 L steel". */
export function cylindersName(cylinders: readonly CylinderSetup[]): string {
  const names = cylinders.map(({ waterL, material }) => `${plain(waterL)} L ${material}`);
  const isOneSize = names.every((name) => name === names[0]);
  return isOneSize ? `${['', '', 'two ', 'three ', 'four '][names.length] ?? ''}${names[0]}` : names.join(' and ');
}

/** A number with at most four digits that count, as words carry it. */
export function plain(value: number): string {
  return String(Number(value.toPrecision(4)));
}
