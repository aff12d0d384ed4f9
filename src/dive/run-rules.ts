import { CONTROL_NAMES, CONTROL_RANGES, TICKS_PER_S } from './controls.ts';
import { isWhole } from './run-columns.ts';
import type { GivenRun } from './run-schema.ts';
import { CONTROLS_IN_VERSION } from './run-text.ts';
import { STATE_NAMES, solidSums } from './state.ts';

/** A break of a rule that joins several places of a run file. */
export interface RunRuleBreak {
  readonly at: readonly (string | number)[];
  readonly found: string;
  readonly allowed: string;
}

/** How late in a dive a run may begin: a day. */
const LATEST_START_TICK = 24 * 3600 * TICKS_PER_S;
/** Sums of the same parts in the same order are the same; this much is left to those who order them otherwise. */
const SAME_SHARE = 1e-9;

/** Whether two numbers are the same but for rounding. */
function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_SHARE * Math.max(1e-3, Math.abs(a), Math.abs(b));
}

/** All breaks of the rules on the rig of a run: its sums, its column of water, its volumes. */
export function rigBreaks({ rig }: GivenRun): RunRuleBreak[] {
  const out: RunRuleBreak[] = [];
  const must = (holds: boolean, at: RunRuleBreak['at'], found: number | string, allowed: string) => {
    if (!holds) out.push({ at: ['rig', ...at], found: String(found), allowed });
  };
  const sum = (numbers: number[]) => numbers.reduce((total, number) => total + number, 0);
  const masses = sum(rig.solids.map((part) => part.massKg));
  const volumes = sum(rig.solids.map((part) => part.volumeM3));
  must(same(rig.bareKg, masses), ['bareKg'], rig.bareKg, `the sum over the solids, ${masses}`);
  must(same(rig.bareM3, volumes), ['bareM3'], rig.bareM3, `the sum over the solids, ${volumes}`);
  const shells = rig.solids.filter(({ part }) => /^cylinder-\d+$/.test(part)).map(({ part }) => part);
  const wanted = rig.vessels.map((_, i) => `cylinder-${i + 1}`);
  must(
    shells.join() === wanted.join(),
    ['solids'],
    `the shells ${shells.join(' ')}`,
    `one a vessel: ${wanted.join(' ')}`,
  );

  const { surfacePressurePa, gravityMps2, segments } = rig.column;
  segments.forEach((segment, i) => {
    const at = (key: string) => ['column', 'segments', i, key];
    const above = segments[i - 1];
    if (!above) {
      must(segment.fromM === 0, at('fromM'), segment.fromM, '0 for the first');
      must(segment.pressurePa === surfacePressurePa, at('pressurePa'), segment.pressurePa, `${surfacePressurePa}`);
    } else {
      const thickM = segment.fromM - above.fromM;
      must(thickM > 0, at('fromM'), segment.fromM, `more than ${above.fromM}`);
      const meanDensity = above.densityKgPerM3 + 0.5 * above.slopeKgPerM4 * thickM;
      const pressurePa = above.pressurePa + gravityMps2 * thickM * meanDensity;
      must(same(segment.pressurePa, pressurePa), at('pressurePa'), segment.pressurePa, `${pressurePa}`);
    }
    const thickM = (segments[i + 1]?.fromM ?? Infinity) - segment.fromM;
    const ends =
      segment.slopeKgPerM4 === 0 ? segment.densityKgPerM3 : segment.densityKgPerM3 + segment.slopeKgPerM4 * thickM;
    must(
      ends >= 800 && ends <= 1500,
      at('slopeKgPerM4'),
      segment.slopeKgPerM4,
      'a density that stays from 800 to 1500',
    );
  });
  const { residualM3, endExpiratoryM3, totalM3 } = rig.lungs;
  must(residualM3 < totalM3, ['lungs', 'residualM3'], residualM3, `less than the total, ${totalM3}`);
  const inside = endExpiratoryM3 >= residualM3 && endExpiratoryM3 <= totalM3;
  must(inside, ['lungs', 'endExpiratoryM3'], endExpiratoryM3, `${residualM3} to ${totalM3}`);
  must(
    rig.lungs.open === (rig.loop === null),
    ['lungs', 'open'],
    String(rig.lungs.open),
    'true without a loop, else false',
  );
  return out;
}

/** All breaks of the rules on a run's first controls and first state. */
export function startBreaks({ version, rig, start, controls }: GivenRun): RunRuleBreak[] {
  const out: RunRuleBreak[] = [];
  const known = CONTROLS_IN_VERSION[version];
  if (controls.length !== known)
    return [{ at: ['controls'], found: `${controls.length} numbers`, allowed: `${known}: one a control` }];
  controls.forEach((value, i) => {
    const name = CONTROL_NAMES[i];
    const [least, most] = CONTROL_RANGES[name];
    if (!isWhole(value, least, most))
      out.push({ at: ['controls', i], found: `${name} ${value}`, allowed: `a whole number from ${least} to ${most}` });
  });
  const count = STATE_NAMES.length + rig.vessels.length;
  if (start.length !== count) {
    const allowed = `${count}: those of the state and one a cylinder`;
    return [...out, { at: ['start'], found: `${start.length} numbers`, allowed }];
  }
  const value = (name: (typeof STATE_NAMES)[number]) => start[STATE_NAMES.indexOf(name)];
  const sums = solidSums(rig, value('releasedMask'));
  STATE_NAMES.forEach((name, i) => {
    const found = start[i];
    const say = (allowed: string) => out.push({ at: ['start', i], found: `${name} ${found}`, allowed });
    if (name in sums) {
      const right = sums[name as keyof typeof sums];
      if (!same(found, right)) say(`the sum over what is worn, ${right}`);
      return;
    }
    const bound = name === 'releasedMask' ? ([0, 2 ** rig.lead.length - 1] as const) : STATE_BOUNDS[name];
    if (!bound) throw new RangeError(`startBreaks: no bounds for ${name}`);
    const [least, most] = bound;
    if (!(found >= least && found <= most)) say(`${least} to ${most}`);
    else if (WHOLE.has(name) && !Number.isInteger(found)) say('a whole number');
  });
  for (let i = STATE_NAMES.length; i < count; i++)
    if (!(start[i] >= 0 && start[i] <= 5000))
      out.push({ at: ['start', i], found: `${start[i]} mol`, allowed: '0 to 5000' });
  if (!same(value('pitchCos') ** 2 + value('pitchSin') ** 2, 1))
    out.push({ at: ['start'], found: 'an attitude that is no unit vector', allowed: 'pitchCos² + pitchSin² = 1' });
  if (!(value('depthM') <= rig.bottomM))
    out.push({ at: ['start'], found: `a depth of ${value('depthM')}`, allowed: `at most the bottom, ${rig.bottomM}` });
  return out;
}

/** What a state can hold; sums over what is worn and the mask of lead are checked against the rig. */
const STATE_BOUNDS: Readonly<Partial<Record<(typeof STATE_NAMES)[number], readonly [number, number]>>> = {
  tick: [0, LATEST_START_TICK],
  depthM: [-3, 200],
  speedMps: [-30, 30],
  pitchCos: [-1, 1],
  pitchSin: [-1, 1],
  pitchRateRadps: [-20, 20],
  lungM3: [0, 0.05],
  lungMol: [0, 50],
  jacketMol: [0, 500],
  suitMol: [0, 500],
  loopMol: [0, 500],
  bubbleMol: [-1e-6, 1e5],
  airMol: [-1e5, 1e5],
  breathTick: [0, 1e5],
  breathTicks: [0, 1e5],
  breathIn: [0, 1],
  thrustN: [-100, 100],
  sprintS: [0, 5],
  resting: [0, 2],
  flags: [0, 511],
  finsUpNs: [0, 1e8],
  finsDownNs: [0, 1e8],
  letInM3: [0, 1e4],
  letOutM3: [0, 1e4],
};
const WHOLE: ReadonlySet<string> = new Set([
  'tick',
  'breathTick',
  'breathTicks',
  'breathIn',
  'resting',
  'flags',
  'releasedMask',
]);
