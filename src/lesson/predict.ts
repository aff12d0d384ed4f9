import type { Topic } from './topics.ts';

export interface Option {
  readonly id: string;
  readonly words: string;
}

interface PredictBase {
  readonly kind: 'predict';
  readonly id: string;
  readonly question: string;
  /** Why it is so, shown with the answer. */
  readonly why: string;
}

/**
 * What a topic is asked with. Depths are positive down, and so are speed and offset; litres are jacket gas more than neutral at
 * mid-breath at `atM`, below 0 for fewer.
 */
export interface TopicParameters {
  readonly atM?: number;
  readonly toM?: number;
  readonly byM?: number;
  readonly offL?: number;
  readonly speedMpmin?: number;
  readonly afterS?: number;
  readonly kg?: number;
  readonly toPsu?: number;
  /** Thickness of the suit as a share of the one that is worn. */
  readonly suitShare?: number;
}

/** A prediction about a topic that the model computes from the lesson's own setup. */
interface Computed extends TopicParameters {
  readonly topic: Topic;
}

/** A choice among plain buttons; option ids are the outcomes of the topic. Only what no topic covers has its answer typed in. */
export interface PredictChoice extends PredictBase, Partial<Computed> {
  readonly shape: 'choice';
  readonly options: readonly Option[];
  readonly answer?: string;
}

/** A scale of equal steps. */
export interface Scale {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** Right within this of what is computed. */
  readonly within: number;
}

/** A number on a scale. */
export interface PredictNumber extends PredictBase, Computed, Scale {
  readonly shape: 'number';
}

/** A depth on the scale of the water, metres. */
export interface PredictPlace extends PredictBase, Computed, Scale {
  readonly shape: 'place';
}

/** A curve, drawn as one value for each of a few places along the bottom. */
export interface PredictCurve extends PredictBase, Computed, Scale {
  readonly shape: 'curve';
  /** Where values are asked for, in `alongUnit`. */
  readonly along: readonly number[];
  readonly alongUnit: string;
}

/** Items to be put in order, the greatest first; item ids are what the topic orders. */
export interface PredictOrder extends PredictBase, Computed {
  readonly shape: 'order';
  readonly items: readonly Option[];
}

export type PredictStep = PredictChoice | PredictNumber | PredictPlace | PredictCurve | PredictOrder;

/** A prediction without what it is about: enough to say whether an answer is right, and how far off it is. */
export type PredictShape = Shaped<PredictStep>;
type Shaped<Step> = Step extends unknown ? Omit<Step, 'topic' | keyof TopicParameters> : never;
