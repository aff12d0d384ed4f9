/** What a topic can be asked with, beside the lesson's setup. */
export const PARAMETERS = ['atM', 'toM', 'byM', 'offL', 'speedMpmin', 'afterS', 'kg', 'toPsu', 'suitShare'] as const;
export type Parameter = (typeof PARAMETERS)[number];

/** What a topic's answer is, and the parameters that it needs. */
export type TopicShape = { readonly needs: readonly Parameter[] } & (
  | { readonly shape: 'choice'; readonly outcomes: readonly string[] }
  | { readonly shape: 'number' | 'place'; readonly unit: string }
  | { readonly shape: 'curve'; readonly unit: string; readonly along: string }
  | { readonly shape: 'order' }
);

/** What the model can be asked, so that no lesson has to know the answer. The computations are in truth*.ts. */
export const TOPICS = {
  /** Ten seconds from the start without a press. */
  'floats-hands-off': { shape: 'choice', outcomes: ['stays-clear', 'goes-under', 'sinks'], needs: [] },
  /** The least that takes the head under from the start. */
  'what-sinks': { shape: 'choice', outcomes: ['breath', 'gas', 'both', 'nothing'], needs: [] },
  /** Where all lead that can be let go leaves a diver, jacket empty, after 20 s. */
  'lead-let-go': { shape: 'choice', outcomes: ['floats-clear', 'floats-low', 'sinks'], needs: [] },

  /** Jacket gas for neutral at a depth, half a breath in, cylinder as filled, with so many kilograms more lead. */
  'jacket-for-neutral': { shape: 'number', unit: 'L', needs: ['atM'] },
  'jacket-with-more-lead': { shape: 'number', unit: 'L', needs: ['atM', 'kg'] },
  /** The least jacket gas that floats the head clear. */
  'jacket-for-floating': { shape: 'number', unit: 'L', needs: [] },
  /** Gas at a depth that lifts so many kilograms. */
  'litres-for-kilograms': { shape: 'number', unit: 'L', needs: ['atM', 'kg'] },
  /** Gas, as volume at the depth arrived at, that must be let in or out between two neutral hovers. */
  'gas-to-move': { shape: 'number', unit: 'L', needs: ['atM', 'toM'] },
  /** What jacket gas that is right at one depth needs on the way to a shallower one. */
  'gas-on-the-way-up': { shape: 'choice', outcomes: ['add', 'leave', 'let-out'], needs: ['atM', 'toM'] },
  /** A litre at the surface, at several depths. */
  'gas-curve': { shape: 'curve', unit: 'L', along: 'm', needs: [] },
  /** Jacket gas for neutral at several depths. */
  'jacket-curve': { shape: 'curve', unit: 'L', along: 'm', needs: [] },
  /** Depths by how fast gas grows there for each metre up; item ids are depths in metres: m3, m10. */
  'gas-growth-order': { shape: 'order', needs: [] },
  /** Gas to let into a drysuit on the way down, as volume at the depth arrived at, so that it keeps its volume. */
  'suit-gas': { shape: 'number', unit: 'L', needs: ['atM', 'toM'] },

  /** How soon a breath of one litre more ends sinking at 6 m/min, neutral otherwise, and how much deeper by then. */
  'breath-lag': { shape: 'number', unit: 's', needs: ['atM'] },
  'breath-overshoot': { shape: 'number', unit: 'm', needs: ['atM'] },
  /** What a breath of one litre more does to a neutral diver. */
  'deep-breath': { shape: 'choice', outcomes: ['up', 'down', 'nothing'], needs: ['atM'] },
  /** Where a diver with so much gas too much is, moved so far from a depth, after so long with the hands off. */
  'drift-leads': { shape: 'place', unit: 'm', needs: ['atM', 'byM', 'offL', 'afterS'] },
  /** Whether who is moved comes back by himself. */
  'comes-back': { shape: 'choice', outcomes: ['comes-back', 'runs-away'], needs: ['atM'] },
  /** Time in which a small offset doubles, neutral at a depth. */
  'doubling-time': { shape: 'number', unit: 's', needs: ['atM'] },
  /** Depths by how soon control is lost there; the soonest first. */
  'doubling-order': { shape: 'order', needs: [] },
  /** The gentlest of lungs, gas, and everything at once that still stops a diver before bottom or surface, a second to react. */
  'still-stops': {
    shape: 'choice',
    outcomes: ['breath', 'gas', 'all', 'too-late'],
    needs: ['atM', 'offL', 'speedMpmin'],
  },
  /** Where gas alone stops a diver who sinks from rest with the jacket empty, the first press after so long. */
  'stops-at': { shape: 'place', unit: 'm', needs: ['atM', 'afterS'] },
  /** How much deeper that is for a second more. */
  'second-costs': { shape: 'number', unit: 'm', needs: ['atM', 'afterS'] },
  /** The latest second at which venting still ends under water, with so much gas too much. */
  'latest-vent': { shape: 'number', unit: 's', needs: ['atM', 'offL'] },
  /** Fastest on the way up, over 3 s and before the head is out, when a neutral diver loses lead and does nothing. */
  'lost-lead-rate': { shape: 'number', unit: 'm/min', needs: ['atM', 'kg'] },
  /** Deepest place from which full lungs alone come up, jacket empty, cylinder full. */
  'breath-reaches-to': { shape: 'place', unit: 'm', needs: [] },
  /** Which attitude has the greater pull down, and which sinks faster, so many kilograms heavy. */
  'posture-force': { shape: 'choice', outcomes: ['upright', 'level', 'same'], needs: ['atM', 'kg'] },
  'posture-speed': { shape: 'choice', outcomes: ['upright', 'level', 'same'], needs: ['atM', 'kg'] },

  /** Lead that is more than neutral at 5 m with 50 bar left. */
  'lead-too-much': { shape: 'number', unit: 'kg', needs: [] },
  /** How much lighter the diver is once the cylinder is at 50 bar. */
  'lighter-at-reserve': { shape: 'number', unit: 'kg', needs: [] },
  /** More lead for other water, or for a thicker suit; below 0 for less. */
  'lead-in-other-water': { shape: 'number', unit: 'kg', needs: ['toPsu'] },
  'lead-in-other-suit': { shape: 'number', unit: 'kg', needs: ['suitShare'] },
  /** Net pull at mid-breath, jacket empty, at several cylinder pressures, up positive. */
  'swing-curve': { shape: 'curve', unit: 'kg', along: 'bar', needs: ['atM'] },
} as const satisfies Readonly<Record<string, TopicShape>>;
export type Topic = keyof typeof TOPICS;
