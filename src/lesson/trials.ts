import { rigOf, type Rig, type Setup } from '../diver/index.ts';
import { neutralLeadKg, withMoreLead } from '../insight/index.ts';
import { chanceOf } from '../pilot/index.ts';
import type { FlyStep, Lesson, MarkTask } from './lesson.ts';

/** A kit that marks and habits are tried in: a suit, a water, and so much lead more than neutral at 5 m with 50 bar. */
export interface TrialCell {
  readonly id: string;
  readonly cut: 'one-piece' | 'two-piece';
  readonly thicknessMm: number;
  readonly salinityPsu: number;
  readonly moreLeadKg: number;
  /**
   * Marks, pilots and limits were settled on those for tuning; the held-out ones confirm, and were flown again after each change; the
   * unseen ones were flown when nothing was changed any more.
   */
  readonly use: 'tuning' | 'held-out' | 'unseen';
}

const cell = (
  use: TrialCell['use'],
  thicknessMm: number,
  cut: TrialCell['cut'],
  moreLeadKg: number,
  salinityPsu = 35,
): TrialCell => {
  const suit = `${thicknessMm}mm${cut === 'two-piece' ? '-two-piece' : ''}${salinityPsu === 0 ? '-fresh' : ''}`;
  return { id: `${suit}+${moreLeadKg}`, cut, thicknessMm, salinityPsu, moreLeadKg, use };
};

/** All kits of the trials. */
export const TRIAL_CELLS: readonly TrialCell[] = [
  cell('tuning', 5, 'one-piece', 0),
  cell('tuning', 5, 'one-piece', 2),
  cell('tuning', 5, 'one-piece', 4),
  cell('tuning', 7, 'two-piece', 0),
  cell('tuning', 7, 'two-piece', 2),
  cell('held-out', 3, 'one-piece', 0.5),
  cell('held-out', 3, 'one-piece', 2.5),
  cell('held-out', 7, 'one-piece', 0.5, 0),
  cell('held-out', 7, 'one-piece', 2.5, 0),
  cell('held-out', 7, 'two-piece', 0.5),
  cell('held-out', 7, 'two-piece', 2.5),
  cell('held-out', 5, 'one-piece', 1),
  cell('held-out', 5, 'one-piece', 3),
  cell('unseen', 3, 'one-piece', 1.5, 0),
  cell('unseen', 5, 'one-piece', 2, 0),
  cell('unseen', 6, 'one-piece', 1),
  cell('unseen', 7, 'two-piece', 1.5),
];

/** What is flown in a trial. */
export const TRIAL_TASKS = ['hover', 'ascent', 'descent', 'first-dive'] as const;
export type TrialTask = (typeof TRIAL_TASKS)[number];

/** Area of foam in a suit of one and of two pieces, m². @source ready setups of the program, practice */
const FOAM_M2 = { 'one-piece': 1.35, 'two-piece': 2.1 };
/** Gauge pressure at the start: dives from the surface begin with a full cylinder, or nobody in a thick suit could sink. */
const FILL_BAR: Readonly<Record<TrialTask, number>> = { hover: 120, ascent: 120, descent: 200, 'first-dive': 200 };
const BOTTOM_M = 40;
/** Time for a way: who waits for a while before he corrects must get there too, or the mark is of his luck. */
const WAY_S = 360;

/** The diver of a cell at the start of a task. @param base a setup with one open-circuit cylinder, a foam suit and a jacket */
export function trialRig(base: Setup, { cut, thicknessMm, salinityPsu, moreLeadKg }: TrialCell, task: TrialTask): Rig {
  if (base.suit.kind !== 'foam') throw new RangeError(`trialRig: the setup needs a foam suit, got ${base.suit.kind}`);
  const rig = rigOf({
    ...base,
    water: { ...base.water, salinityPsu, bottomM: BOTTOM_M, line: true },
    suit: { ...base.suit, cut, thicknessMm, areaM2: FOAM_M2[cut] },
    cylinders: base.cylinders.map((cylinder) => ({ ...cylinder, fillBar: FILL_BAR[task] })),
  });
  const worn = rig.lead.reduce((kg, { massKg }) => kg + massKg, 0);
  return withMoreLead(rig, neutralLeadKg(rig) + moreLeadKg - worn);
}

/** The lesson of a task with what chance makes of its start. The first dive has no chance in it and is a lesson of the program. */
export function trialLesson(task: Exclude<TrialTask, 'first-dive'>, seed: number): Lesson {
  const chance = chanceOf(seed ^ 0x5bd1e995);
  switch (task) {
    case 'hover': {
      const depthM = 8 + Math.min(Math.max(0.5 * chance.normal(), -0.9), 0.9);
      // Near neutral there would be nothing to put right, and whoever does nothing would be good at it.
      const wrongL = (0.4 + 0.5 * chance.uniform()) * (chance.uniform() < 0.5 ? -1 : 1);
      return trial(
        task,
        under(depthM, wrongL),
        [hold('hover', 8, 60)],
        [{ mark: 'hover', hold: 'hover', fastAscentIsThePoint: false }],
      );
    }
    case 'ascent':
      return trial(
        task,
        under(18, Math.min(Math.max(0.3 * chance.normal(), -0.9), 0.9)),
        [travel('ascent', 5, WAY_S), hold('stop', 5, 120), fly('surface', { kind: 'float', forS: 3, withinS: 240 })],
        [{ mark: 'ascent', travel: 'ascent', hold: 'stop', surface: 'surface', fastAscentIsThePoint: false }],
      );
    case 'descent':
      return trial(
        task,
        // Who begins alike arrives on the same breath each time, and a kit then flatters one pilot or another.
        under(1.2 + 1.2 * chance.uniform(), 0.5),
        [travel('descent', 12, WAY_S), hold('hover', 12, 60)],
        [{ mark: 'descent', travel: 'descent', hold: 'hover', fastAscentIsThePoint: false }],
      );
  }
}

/** At a depth, level and at rest, so many litres of gas in the jacket more than neutral. */
function under(depthM: number, offNeutralL: number): Lesson['start'] {
  return { place: 'under', depthM, gas: { offNeutralL }, speedMpmin: 0, pitchDeg: 0 };
}

function trial(id: string, start: Lesson['start'], steps: FlyStep[], marks: MarkTask[]): Lesson {
  return {
    format: 1,
    id,
    title: id,
    minutes: 8,
    phase: 'under-control',
    paths: [],
    opens: 'always',
    beliefs: [],
    objective: '',
    caution: '',
    values: [],
    rightAtLeast: null,
    proof: [],
    setup: { ready: '', changes: {} },
    start,
    steps,
    marks,
    markLimits: null,
    waterAdds: '',
  };
}

function fly(id: string, goal: FlyStep['goal']): FlyStep {
  return {
    kind: 'fly',
    id,
    title: id,
    hint: '',
    goal,
    limits: { upMpmin: null, downMpmin: null },
    keep: [],
    events: [],
    gauges: 'all',
    hands: [],
  };
}

function travel(id: string, toM: number, withinS: number): FlyStep {
  return fly(id, { kind: 'travel', toM, bandM: 1, withinS });
}

function hold(id: string, atM: number, forS: number): FlyStep {
  return fly(id, { kind: 'hold', atM, bandM: 1, settleS: 10, forS });
}
