/** One of our own setups, as a menu shows it. The file of the same id holds the rest, this name and note included. */
export interface ReadySetup {
  readonly id: string;
  readonly name: string;
  readonly note: string;
}

/** Our own setups in the order of the menu. Kept here as well, so that a menu needs none of the files. */
export const READY_SETUPS: readonly ReadySetup[] = [
  {
    id: 'first-dive',
    name: '5 mm, 1 kg too much',
    note: 'The whole job in six minutes: temperate sea, 5 mm, one kilogram more than neutral, eight litres in the jacket at the surface, and an up-line.',
  },
  {
    id: 'pool',
    name: 'Pool, 3 mm',
    note: 'Warm fresh water, four metres deep, a thin suit: the place where most people begin.',
  },
  {
    id: 'no-suit',
    name: 'Warm sea, no suit',
    note: 'Nothing shrinks with depth but the gas in jacket, lungs and gut: the calm end of the scale.',
  },
  {
    id: 'warm-sea',
    name: 'Warm sea, 3 mm, aluminium',
    note: 'A thin suit, and a cylinder that is heavy when full and light when nearly empty.',
  },
  {
    id: 'temperate-sea',
    name: 'Temperate sea, 5 mm',
    note: 'The middle of everything, weighed right: neutral at 5 m with 50 bar left, jacket empty, half a breath in.',
  },
  {
    id: 'cold-lake',
    name: 'Cold lake, 7 mm',
    note: 'Fresh water of 8 °C and a thick one-piece suit, whose gas shrinks to half in the first ten metres.',
  },
  {
    id: 'two-piece',
    name: 'Temperate sea, 7 mm two-piece',
    note: 'Two layers on the trunk and a hood: much lead at the surface, much gas in the jacket at depth.',
  },
  {
    id: 'two-piece-heavy',
    name: '7 mm two-piece, four kilograms too much',
    note: 'Let go under water with the jacket empty: which means still stop this diver, and for how long?',
  },
  {
    id: 'twin',
    name: 'Temperate sea, two cylinders',
    note: 'Two 12 L cylinders over a 7 mm two-piece: breathing both from 200 to 50 bar makes the diver four kilograms lighter.',
  },
  {
    id: 'drysuit-membrane',
    name: 'Cold sea, membrane drysuit',
    note: 'The suit holds gas of its own, which comes and goes through two valves. Weighed with the suit at its least loft.',
  },
  {
    id: 'drysuit-foam',
    name: 'Cold sea, foam drysuit',
    note: 'Foam that shrinks with depth and gas that can be added: both at once. Weighed with the suit at its least loft.',
  },
  {
    id: 'altitude-lake',
    name: 'Mountain lake, 7 mm',
    note: 'Fresh water at 2000 m: the same suit is larger at the surface and shrinks faster. A thought experiment about buoyancy, no plan for a dive.',
  },
  {
    id: 'halocline',
    name: 'Fresh water over sea',
    note: 'Seven metres of nearly fresh water lie on the sea. Weighed for the upper water, the diver is carried by the lower: between them neutral holds itself.',
  },
  {
    id: 'closed-loop',
    name: 'Closed loop, 5 mm',
    note: 'Breathing moves gas inside the loop, so a deep breath lifts nothing. A concept only: no rebreather operation is taught. Weighed with the loop at its least volume.',
  },
  {
    id: 'other-world',
    name: 'Another world, a third of the pull',
    note: 'Gravity of a third of ours: pressure grows slowly with depth, so suit and jacket keep more of their lift. A thought experiment.',
  },
  {
    id: 'pair-light',
    name: 'Pair: weighed right',
    note: 'The lighter of two divers who differ in lead alone: neutral at 5 m with 50 bar left. Fly it beside "Pair: four kilograms too much".',
  },
  {
    id: 'pair-heavy',
    name: 'Pair: four kilograms too much',
    note: 'The heavier of two divers who differ in lead alone: every kilogram too much wants nearly a litre in the jacket, and that gas changes with depth.',
  },
  {
    id: 'pair-thin',
    name: 'Pair: 3 mm suit',
    note: 'The thinner of two suits, lead weighed right for it. Fly it beside "Pair: 7 mm suit".',
  },
  {
    id: 'pair-thick',
    name: 'Pair: 7 mm suit',
    note: 'The thicker of two suits, lead weighed right for it: the same hover needs more gas, and more often.',
  },
];
