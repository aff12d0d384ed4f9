import type { BenchMode, BenchSet, BenchWaterName, MaterialId } from '../bench/index.ts';
import type { BenchTopic, BenchThing } from './bench-topics.ts';
import type { AskStep, ExplainStep, Lesson } from './lesson.ts';
import type { Option, Scale } from './predict.ts';

/** A lesson at the bench: in place of a diver and a start it has things in water, and in place of flying, trying. */
export interface BenchLesson extends Omit<
  Lesson,
  'setup' | 'start' | 'steps' | 'marks' | 'markLimits' | 'proof' | 'phase'
> {
  readonly phase: 'bench';
  readonly bench: BenchScene;
  readonly steps: readonly BenchStep[];
  readonly proof: readonly BenchProof[];
}

/** What stands on the bench when the lesson begins; masses and sizes where they are not the usual ones. */
export interface BenchScene {
  readonly mode: BenchMode;
  readonly set: BenchSet;
  readonly water: BenchWaterName;
  readonly massKg?: number;
  readonly material?: MaterialId;
  readonly widthMm?: number;
  readonly heightMm?: number;
}

export type BenchStep = ExplainStep | BenchPredict | TryStep | AskStep;

interface BenchPredictBase {
  readonly kind: 'predict';
  readonly id: string;
  readonly question: string;
  readonly why: string;
  readonly topic: BenchTopic;
  /** Which thing it is about. */
  readonly of?: BenchThing;
  /** Which of several things, from the left, counted from 1. */
  readonly thing?: number;
  readonly atM?: number;
  readonly toWater?: BenchWaterName;
}

/** A prediction about the bench; the answer is computed from the lesson's own things. */
export type BenchPredict =
  | (BenchPredictBase & { readonly shape: 'choice'; readonly options: readonly Option[] })
  | (BenchPredictBase & Scale & { readonly shape: 'number' })
  | (BenchPredictBase &
      Omit<Scale, 'within'> & {
        readonly shape: 'curve';
        readonly along: readonly number[];
        readonly alongUnit: string;
        /** Right within this share of what is computed. */
        readonly withinShare: number;
      });

/** Something to be done at the bench until its readings say so. */
export interface TryStep {
  readonly kind: 'try';
  readonly id: string;
  readonly title: string;
  readonly hint: string;
  /** Come about one after the other, in this order. */
  readonly each: readonly BenchAim[];
}

/** Readings that must be so together, and for how long on end, seconds. */
export interface BenchAim {
  /** "the tray floats". */
  readonly says: string;
  readonly all: readonly BenchRange[];
  readonly forS: number;
}

/** What a condition looks at, each with its unit. Things in the tank unless said. */
export const BENCH_QUANTITIES = {
  /** 1 while a hand holds the thing, or both bodies of a column; else 0. */
  held: '',
  /** 1 while it hangs on the balance. */
  hung: '',
  speedMps: 'm/s',
  /** What is above water: of a hollow thing its rim; below 0 it is under. */
  freeboardMm: 'mm',
  draughtMm: 'mm',
  /** Lowest point over the bottom of the tank. */
  clearMm: 'mm',
  balanceN: 'N',
  /** Lift of the water less weight, up positive; in a column too. */
  netN: 'N',
  displacedMl: 'mL',
  glassMl: 'mL',
  waterKgPerM3: 'kg/m³',
  /** Of a body in a column. */
  depthM: 'm',
  gasL: 'L',
  squeezeKPa: 'kPa',
} as const;
export type BenchQuantity = keyof typeof BENCH_QUANTITIES;

export interface BenchRange {
  readonly what: BenchQuantity;
  /** Which thing, from the left, counted from 1; null for the one that is chosen, or the first body. */
  readonly thing: number | null;
  readonly least: number;
  readonly most: number;
}

/** What a scripted hand does, so many seconds after a step to try has begun. */
export interface HandMove {
  readonly during: string;
  readonly atS: number;
  readonly do: HandDoes;
  readonly thing?: number;
  readonly shape?: 'ball' | 'tray' | 'boat';
  readonly water?: BenchWaterName;
  readonly byMm?: number;
  readonly atM?: number;
  readonly kPa?: number;
}

/** What hands can do, each with the key that it needs. */
export const HANDS_DO = {
  'let-go': null,
  take: null,
  under: null,
  balance: null,
  spout: null,
  anew: null,
  choose: 'thing',
  shape: 'shape',
  water: 'water',
  hook: 'byMm',
  depth: 'atM',
  squeeze: 'kPa',
} as const;
export type HandDoes = keyof typeof HANDS_DO;

/** Who goes through the lesson: how predictions are answered, what hands do, and what must come of it. */
export interface BenchProof {
  readonly answers: 'right' | 'wrong' | 'none';
  readonly hands: readonly HandMove[];
  readonly comes: 'pass' | 'fail';
  /** Of a failure: id of the step that shows it, or predictions; empty for any. */
  readonly fault: string;
}
