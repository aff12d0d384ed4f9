/** What the model can be asked, so that no lesson has to know the answer. The computations are in truth.ts. */
export const TOPICS = [
  'floats-hands-off',
  'what-sinks',
  'jacket-for-neutral',
  'gas-on-the-way-up',
  'jacket-for-floating',
  'gas-growth-order',
] as const;
export type Topic = (typeof TOPICS)[number];

/** What a topic's answer is: one outcome of a list, a number in a unit, or an order of depths. */
export type TopicShape =
  | { readonly shape: 'choice'; readonly outcomes: readonly string[] }
  | { readonly shape: 'number'; readonly unit: string; readonly needsDepth: boolean }
  | { readonly shape: 'order' };
