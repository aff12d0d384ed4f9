/** What a topic's answer is: one outcome of a list, a number in a unit, or depths in order; and the depths it needs. */
export type TopicShape =
  | { readonly shape: 'choice'; readonly outcomes: readonly string[]; readonly depths: readonly ('atM' | 'toM')[] }
  | { readonly shape: 'number'; readonly unit: string; readonly depths: readonly ('atM' | 'toM')[] }
  | { readonly shape: 'order'; readonly depths: readonly [] };

/** What the model can be asked, so that no lesson has to know the answer. The computations are in truth.ts. */
export const TOPICS = {
  /** Ten seconds from the start without a press. */
  'floats-hands-off': { shape: 'choice', outcomes: ['stays-clear', 'goes-under', 'sinks'], depths: [] },
  /** The least that takes the head under from the start. */
  'what-sinks': { shape: 'choice', outcomes: ['breath', 'gas', 'both', 'nothing'], depths: [] },
  /** Jacket gas for neutral at a depth, half a breath in, cylinder as filled. */
  'jacket-for-neutral': { shape: 'number', unit: 'L', depths: ['atM'] },
  /** How soon a breath of one litre more ends sinking at 6 m/min, neutral otherwise, at a depth. */
  'breath-lag': { shape: 'number', unit: 's', depths: ['atM'] },
  /** What jacket gas that is right at one depth needs on the way to a shallower one. */
  'gas-on-the-way-up': { shape: 'choice', outcomes: ['add', 'leave', 'let-out'], depths: ['atM', 'toM'] },
  /** The least jacket gas that floats the head clear. */
  'jacket-for-floating': { shape: 'number', unit: 'L', depths: [] },
  /** Depths by how fast gas grows there for each metre up; item ids are depths in metres: m3, m10. */
  'gas-growth-order': { shape: 'order', depths: [] },
} as const satisfies Readonly<Record<string, TopicShape>>;
export type Topic = keyof typeof TOPICS;
