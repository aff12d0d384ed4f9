import { DeepDesk, TankDesk, type BenchAsk } from '../bench/index.ts';
import { judgeBench, type BenchResult } from './bench-judge.ts';
import type { BenchLesson, BenchPredict, BenchProof } from './bench-lesson.ts';
import type { BenchSeen } from './bench-readings.ts';
import {
  advanceBench,
  answerBench,
  beginBench,
  benchPrompt,
  passOver,
  tryingNow,
  type BenchRun,
} from './bench-runner.ts';
import { askOf, preparing } from './bench-scene.ts';
import type { Answer } from './run.ts';
import { benchTruth } from './truth-bench.ts';
import type { Truth } from './truth.ts';

/** A bench with the things of a lesson on it, and the lesson's run, which follows its readings. */
export class BenchInHand {
  readonly lesson: BenchLesson;
  readonly #desk: TankDesk | DeepDesk;
  #run: BenchRun;

  /** @param left where the lesson goes on; from its beginning unless said */
  constructor(lesson: BenchLesson, left: BenchRun = beginBench(lesson)) {
    this.lesson = lesson;
    const { mode } = lesson.bench;
    this.#desk = mode === 'tank' ? new TankDesk() : new DeepDesk(mode);
    for (const ask of preparing(lesson.bench)) this.#desk.hear(ask);
    this.#run = left;
  }

  get run(): BenchRun {
    return this.#run;
  }

  seen(): BenchSeen {
    const desk = this.#desk;
    return desk instanceof TankDesk ? { tank: desk.view(), deep: null } : { tank: null, deep: desk.view() };
  }

  /** Does what is asked while something is tried; to begin anew is to begin as the lesson does. */
  hear(ask: BenchAsk): void {
    if (benchPrompt(this.lesson, this.#run)) return;
    for (const one of ask.do === 'anew' ? preparing(this.lesson.bench) : [ask]) this.#desk.hear(one);
  }

  /** Lets time pass, seconds: nothing moves while something is asked. */
  pass(seconds: number): void {
    if (seconds <= 0 || benchPrompt(this.lesson, this.#run)) return;
    this.#desk.pass(seconds);
    this.#run = advanceBench(this.lesson, this.#run, this.seen(), seconds);
  }

  answer(answer: Answer): void {
    this.#run = answerBench(this.lesson, this.#run, answer);
  }

  /** Goes on without what is tried now. */
  passOver(): void {
    this.#run = passOver(this.lesson, this.#run);
  }

  result(): BenchResult {
    return judgeBench(this.lesson, this.#run);
  }
}

/** Hands and readings of a script are looked at so often, and given up so long after the last move, seconds. */
const LOOK_S = 1 / 30;
const PATIENCE_S = 40;

/** What came of somebody whom a proof describes. */
export function workedBench(lesson: BenchLesson, proof: BenchProof): BenchResult & { readonly tookS: number } {
  const hand = new BenchInHand(lesson);
  for (;;) {
    const prompt = benchPrompt(lesson, hand.run);
    const now = tryingNow(lesson, hand.run);
    if (prompt) hand.answer(prompt.kind === 'explain' ? null : answerOf(lesson, prompt.id, proof.answers));
    else if (now) tryWith(hand, proof, now.step.id);
    else return { ...hand.result(), tookS: hand.run.passedS };
  }
}

function tryWith(hand: BenchInHand, proof: BenchProof, id: string): void {
  const hands = new ScriptedHands(hand, proof, id);
  for (;;) {
    hands.work();
    hand.pass(LOOK_S);
    if (tryingNow(hand.lesson, hand.run)?.step.id !== id) return;
    if (hands.gaveUp) return hand.passOver();
  }
}

/** Hands of a proof at one step to try, from now on. */
export class ScriptedHands {
  readonly #hand: BenchInHand;
  readonly #moves: BenchProof['hands'];
  readonly #fromS: number;
  #next = 0;

  constructor(hand: BenchInHand, proof: BenchProof, stepId: string) {
    this.#hand = hand;
    this.#moves = proof.hands.filter(({ during }) => during === stepId);
    this.#fromS = hand.run.passedS;
  }

  /** Does what is due. */
  work(): void {
    const { bench } = this.#hand.lesson;
    for (let move = this.#moves[this.#next]; move && move.atS <= this.#passedS; move = this.#moves[++this.#next])
      for (const ask of askOf(bench, move)) this.#hand.hear(ask);
  }

  /** The last move was so long ago that nothing will come of it. */
  get gaveUp(): boolean {
    return this.#passedS > Math.max(0, ...this.#moves.map(({ atS }) => atS)) + PATIENCE_S;
  }

  get #passedS(): number {
    return this.#hand.run.passedS - this.#fromS;
  }
}

/** Hands that a lesson's proof knows to pass, at one step to try: they show it to a class. */
export function showingHands(hand: BenchInHand, stepId: string): ScriptedHands | null {
  const proof = hand.lesson.proof.find(({ comes }) => comes === 'pass');
  return proof ? new ScriptedHands(hand, proof, stepId) : null;
}

function answerOf(lesson: BenchLesson, id: string, how: BenchProof['answers']): Answer {
  const step = lesson.steps.find((one): one is BenchPredict => one.kind === 'predict' && one.id === id);
  if (!step || how === 'none') return null;
  const truth = benchTruth(lesson, step);
  if (how === 'right') return onScale(step, truth) ? truth : null;
  if (step.shape === 'choice') return step.options.find((option) => option.id !== truth)?.id ?? null;
  if (step.shape === 'curve') return step.along.map(() => step.most);
  return Number(truth) - step.least > step.most - Number(truth) ? step.least : step.most;
}

/** Whether an answer can be given on the scale that its question has. */
export function onScale(step: BenchPredict, truth: Truth): boolean {
  if (step.shape === 'choice') return true;
  return [truth].flat().every((value) => Number(value) >= step.least && Number(value) <= step.most);
}

/** Whether a lesson came to what its proof says. */
export function benchAsExpected(proof: BenchProof, { verdict, demands }: BenchResult): boolean {
  if (proof.comes === 'pass') return verdict === 'pass';
  const fault = proof.fault === '' || demands.some(({ id, met }) => id === proof.fault && !met);
  return verdict === 'fail' && fault;
}
