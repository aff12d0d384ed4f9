import type { BenchMode, BenchSet } from '../bench/index.ts';

/** What a question can be about, beside things that are counted from the left. */
export const BENCH_THINGS = ['lump', 'tray', 'bag', 'ball', 'bottle'] as const;
export type BenchThing = (typeof BENCH_THINGS)[number];

/** What a topic of the bench can be asked with. */
export const BENCH_PARAMETERS = ['of', 'thing', 'atM', 'toWater'] as const;
export type BenchParameter = (typeof BENCH_PARAMETERS)[number];

/** What a topic's answer is, what it needs, and where its things stand. */
export type BenchTopicShape = {
  readonly at: BenchMode | BenchSet;
  readonly needs: readonly BenchParameter[];
  /** Things that it can be asked of. */
  readonly of?: readonly BenchThing[];
} & (
  | { readonly shape: 'choice'; readonly outcomes: readonly string[] }
  | { readonly shape: 'number'; readonly unit: string }
  | { readonly shape: 'curve'; readonly unit: string; readonly along: string }
);

/** What can be asked at the bench; `truth-bench.ts` computes each from the lesson's own things. */
export const BENCH_TOPICS = {
  /** Which of two shapes of the lesson's putty floats: a ball, or a tray. */
  'which-floats': { at: 'putty', shape: 'choice', outcomes: ['lump', 'tray', 'both', 'neither'], needs: [] },
  /** What a balance reads that holds a shape of the putty, lowered as far as it goes under or until it floats. */
  'putty-reads': { at: 'putty', shape: 'number', unit: 'N', needs: ['of'], of: ['lump', 'tray'] },
  /** Where one of the stones comes to rest when it is let go part-way down. */
  'comes-to-rest': { at: 'stones', shape: 'choice', outcomes: ['surface', 'stays', 'bottom'], needs: ['thing'] },
  /** What a body of the deep tank does when it is let go at a depth. */
  'let-go-deep': {
    at: 'deep',
    shape: 'choice',
    outcomes: ['rises', 'stays', 'sinks'],
    needs: ['of', 'atM'],
    of: ['bag', 'ball'],
  },
  /** Gas in the bag at several depths. */
  'bag-curve': { at: 'deep', shape: 'curve', unit: 'L', along: 'm', needs: [] },
  /** Volume, density, and reading under water of the stone. */
  'stone-volume': { at: 'odd-stone', shape: 'number', unit: 'mL', needs: [] },
  'stone-density': { at: 'odd-stone', shape: 'number', unit: 'kg/m³', needs: [] },
  /** How the block lies in other water, and how much less deep, below 0 for deeper. */
  'block-rides': { at: 'block', shape: 'choice', outcomes: ['higher', 'same', 'lower'], needs: ['toWater'] },
  'draught-change': { at: 'block', shape: 'number', unit: 'mm', needs: ['toWater'] },
  /** Depth below which the bottle does not come back, its flask left alone. */
  'no-return': { at: 'bottle', shape: 'number', unit: 'cm', needs: [] },
  /** The squeeze that makes the bottle sink from a depth. */
  'squeeze-to-sink': { at: 'bottle', shape: 'number', unit: 'kPa', needs: ['atM'] },
} as const satisfies Readonly<Record<string, BenchTopicShape>>;
export type BenchTopic = keyof typeof BENCH_TOPICS;
