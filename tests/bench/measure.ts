import { spawnSync } from 'node:child_process';
import { Dive, advance, copyState, overwriteState, restingControls } from '../../src/dive/index.ts';
import { FOAM } from './divers.ts';
import { type Scenario } from './scenarios.ts';

/** One measured number, what is demanded of it, and what else is worth saying. */
export interface Measured {
  readonly name: string;
  readonly value: number;
  readonly most?: number;
  readonly least?: number;
  /** Lower and upper quartile of the rounds. */
  readonly spread?: readonly [number, number];
  readonly note?: string;
}

const ROUNDS = 21;
const WARM_UP = 6;

/** The ratio of two times per unit: rounds of both in turn, the median of their ratios. */
export function timedRatio({ name, ours, theirs, most }: Scenario): Measured {
  for (let i = 0; i < WARM_UP; i++) {
    ours();
    theirs();
  }
  const rounds = Array.from({ length: ROUNDS }, () => {
    const [our, their] = [nsEach(ours), nsEach(theirs)];
    return { ratio: our / their, our, their };
  }).sort((a, b) => a.ratio - b.ratio);
  const at = (share: number) => rounds[Math.floor(share * (ROUNDS - 1))]!;
  const middle = at(0.5);
  return {
    name,
    value: middle.ratio,
    ...(most === undefined ? {} : { most }),
    spread: [at(0.25).ratio, at(0.75).ratio],
    note: `${middle.our.toFixed(0)} ns ÷ ${middle.their.toFixed(0)} ns`,
  };
}

function nsEach(work: () => number): number {
  const from = process.hrtime.bigint();
  const units = work();
  return Number(process.hrtime.bigint() - from) / units;
}

/** Bytes of heap that fifty more minutes of a recorded dive keep beyond its rows, and what garbage bare steps make. */
export function heapGrowth(): Measured {
  const collect = (globalThis as { gc?: () => void }).gc;
  if (!collect) throw new Error('heapGrowth: start node with --expose-gc');
  const heap = () => {
    collect();
    collect();
    return process.memoryUsage().heapUsed;
  };
  const dive = new Dive(FOAM.rig, FOAM.start, restingControls(320));
  dive.advance(10 * 7200);
  // Rows lie in an array buffer, which is not counted among the heap's objects.
  const before = heap();
  dive.advance(50 * 7200);
  const kept = heap() - before;

  const state = copyState(FOAM.start);
  const minute = () => {
    overwriteState(state, FOAM.start);
    advance(FOAM.rig, state, restingControls(320), 7200);
  };
  minute();
  const clean = heap();
  for (let i = 0; i < 60; i++) minute();
  const litter = process.memoryUsage().heapUsed - clean;
  return {
    name: 'bytes of heap that fifty more minutes of a recorded dive keep beyond its rows',
    value: Math.max(0, kept),
    note: `garbage of an hour of bare steps: ${(litter / 432_000).toFixed(2)} bytes a tick; ${dive.recording.rows} rows`,
  };
}

/**
 * Milliseconds that the dive takes beyond the same process doing nothing: the fastest of fifteen starts of each, in turn,
 * since whatever else the machine does can only add.
 */
export function startUps(name: string, args: readonly string[]): Measured {
  const ms = (mode: string) => {
    const from = performance.now();
    const done = spawnSync(process.execPath, [...args, mode], { encoding: 'utf8' });
    if (done.status !== 0) throw new Error(`startUps ${mode}: ${done.stderr}`);
    return performance.now() - from;
  };
  const rounds = Array.from({ length: 15 }, () => ({ nothing: ms('--nothing'), dive: ms('--dive') }));
  const nothing = Math.min(...rounds.map((round) => round.nothing));
  const dive = Math.min(...rounds.map((round) => round.dive));
  return { name, value: dive - nothing, note: `${dive.toFixed(0)} ms less ${nothing.toFixed(0)} ms` };
}
