/** Ticks in a second: the fixed step is 1/120 s. */
export const TICKS_PER_S = 120;
/** Length of the fixed step, seconds. */
export const STEP_S = 1 / TICKS_PER_S;
/** What goes on by itself changes on every sixth tick, a twentieth of a second: pilots, mishaps, lungs that are moved on. A press may come on any. */
export const TICKS_PER_CHANGE = 6;

/**
 * What a diver does, quantised: whole numbers only, so that a run stores and replays to the bit. Volumes in centilitres
 * (0.01 L), thrust in newtons, attitude in degrees. Switches are 0 or 1.
 */
export interface Controls {
  /** Power inflator of the jacket. */
  readonly jacketAdd: number;
  /** 0 shut, 1 shoulder vent, 2 rear vent. */
  readonly jacketVent: number;
  /** Blow lung gas into the jacket by mouth. */
  readonly oral: number;
  readonly suitAdd: number;
  /** Press the exhaust valve open: it passes at any over-pressure. */
  readonly suitVent: number;
  /** Opening pressure of the exhaust valve in hectopascals; −1 leaves it as the setup has it. */
  readonly suitValveHPa: number;
  /** 0 automatic about the level, 1 direct target, 2 held with the airway closed. */
  readonly breath: number;
  /** Middle of the automatic breath, or the target of the direct one, in centilitres. */
  readonly lungCl: number;
  /** Thrust along the body, toward the head positive. */
  readonly finsN: number;
  /** 0 hold `pitchDeg`, 1 apply `torqueNm`. */
  readonly attitude: number;
  /** −180…180: 0 level face down, 90 head up. */
  readonly pitchDeg: number;
  /** Head-up positive. */
  readonly torqueNm: number;
  /** Bit i lets lead piece i go; what has been let go stays gone. */
  readonly releaseMask: number;
  readonly diluent: number;
  readonly noseVent: number;
  readonly holdLine: number;
  /** 1: the ledge of the setup is there. */
  readonly ledge: number;
  /** What bumps into the diver, newtons, up positive: not his doing, as all that follows is not. */
  readonly nudgeUpN: number;
  /** Speed of the water beside that of the setup, mm/s, down positive, and how fast it grows, mm/s². */
  readonly waterDownMmps: number;
  readonly waterDownMmps2: number;
  /** Gauge pressure above which no cylinder keeps its gas, bar; 0: each keeps what it has. What is lost stays lost. */
  readonly gasLeftBar: number;
  /** Piece of lead, counted from 1, that is taken off by hand at the surface, or below 0 put back on; 0 none. */
  readonly handLead: number;
}

/** Names of all controls, in the order in which runs store them. */
export const CONTROL_NAMES = [
  'jacketAdd',
  'jacketVent',
  'oral',
  'suitAdd',
  'suitVent',
  'suitValveHPa',
  'breath',
  'lungCl',
  'finsN',
  'attitude',
  'pitchDeg',
  'torqueNm',
  'releaseMask',
  'diluent',
  'noseVent',
  'holdLine',
  'ledge',
  'nudgeUpN',
  'waterDownMmps',
  'waterDownMmps2',
  'gasLeftBar',
  'handLead',
] as const satisfies readonly (keyof Controls)[];

/** Least and greatest value of each control; whole numbers between them are allowed. */
export const CONTROL_RANGES: Readonly<Record<keyof Controls, readonly [number, number]>> = {
  jacketAdd: [0, 1],
  jacketVent: [0, 2],
  oral: [0, 1],
  suitAdd: [0, 1],
  suitVent: [0, 1],
  suitValveHPa: [-1, 100],
  breath: [0, 2],
  lungCl: [0, 1200],
  finsN: [-100, 100],
  attitude: [0, 1],
  pitchDeg: [-180, 180],
  torqueNm: [-60, 60],
  releaseMask: [0, 2 ** 31 - 1],
  diluent: [0, 1],
  noseVent: [0, 1],
  holdLine: [0, 1],
  ledge: [0, 1],
  nudgeUpN: [-2000, 2000],
  waterDownMmps: [-1000, 1000],
  waterDownMmps2: [-1000, 1000],
  gasLeftBar: [0, 300],
  handLead: [-31, 31],
};

/** Nothing pressed, breathing about a level given in centilitres, held level, the ledge there. */
export function restingControls(lungCl: number): Controls {
  return {
    jacketAdd: 0,
    jacketVent: 0,
    oral: 0,
    suitAdd: 0,
    suitVent: 0,
    suitValveHPa: -1,
    breath: 0,
    lungCl,
    finsN: 0,
    attitude: 0,
    pitchDeg: 0,
    torqueNm: 0,
    releaseMask: 0,
    diluent: 0,
    noseVent: 0,
    holdLine: 0,
    ledge: 1,
    nudgeUpN: 0,
    waterDownMmps: 0,
    waterDownMmps2: 0,
    gasLeftBar: 0,
    handLead: 0,
  };
}

/** Controls of stored numbers, in the order of their names; those that are not among them are at rest. */
export function firstControls(numbers: readonly number[]): Controls {
  const out: Record<keyof Controls, number> = restingControls(0);
  CONTROL_NAMES.forEach((name, i) => (out[name] = numbers[i] ?? out[name]));
  return out;
}

/** The controls brought to whole numbers in range, the nearest allowed; NaN becomes the least value. */
export function quantised(controls: Controls): Controls {
  const out = { ...controls } as Record<keyof Controls, number>;
  for (const name of CONTROL_NAMES) {
    const [least, most] = CONTROL_RANGES[name];
    // + 0 makes 0 of −0, which a run could not store as a difference.
    const value = Math.round(controls[name]) + 0;
    out[name] = value >= least ? Math.min(value, most) : least;
  }
  return out;
}
