import { netForceN, type Instant, type Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import type { NeutralDepth, RecoveryMap, StoppingAsk, StoppingForecast } from '../insight/index.ts';
import type { LookChoice } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import { TOO_FAST_MPS } from './rates.ts';

type StageOverlay = NonNullable<StageView['overlay']>;
type NeutralMark = NonNullable<StageView['neutral']>[number];

/** A neutral depth that holds above this, metres, is a diver who floats, and not marked. */
export const FLOATS_M = 0.6;

/** What the forecasts take for granted, in SI. */
export function askOf({ leastL, mostL, reactionS, below, above }: LookChoice): StoppingAsk {
  return {
    lungs: { leastM3: leastL * 1e-3, mostM3: mostL * 1e-3 },
    reactionS,
    below: below === 'ground' ? { kind: 'ground' } : { kind: 'depth', depthM: below },
    above: above === 'rate' ? { kind: 'rate', mps: TOO_FAST_MPS } : { kind: 'head-out' },
  };
}

/** Lung volume in the middle of the breath that is breathed now; what is in them where they do as they are told or are closed. */
export function midLungM3(rig: Rig, state: Readonly<DiveState>, { breath, lungCl }: Controls): number {
  if (breath !== 0 || !rig.lungs.open) return state.lungM3;
  return Math.min(Math.max(lungCl * 1e-5, rig.lungs.residualM3), rig.lungs.totalM3);
}

/** The diver in the middle of that breath. */
export function midBreath(rig: Rig, state: Readonly<DiveState>, controls: Controls): Instant {
  return { ...state, lungM3: midLungM3(rig, state, controls) };
}

/** Gas that a diver controls most: that of the loop, of a drysuit, or of the jacket. */
export function gasOf(rig: Rig): 'jacket' | 'suit' | 'loop' {
  return rig.loop ? 'loop' : rig.drysuit ? 'suit' : 'jacket';
}

/** Marks on the scale; what floats at the surface needs none. */
export function neutralMarks(neutral: readonly NeutralDepth[]): NeutralMark[] {
  return neutral
    .filter(({ depthM, stable }) => !(stable && depthM < FLOATS_M))
    .map(({ depthM, stable }) => ({ depthM, stable }));
}

/** Net force at each whole metre with the gas of now and the middle of the breath. */
export function forcesOverlay(rig: Rig, at: Instant): StageOverlay {
  const arrows = Array.from({ length: Math.floor(rig.bottomM) }, (_, i) => {
    const depthM = i + 1;
    return { depthM, netN: netForceN(rig, { ...at, depthM }) };
  });
  return { kind: 'forces', arrows };
}

/**
 * Where each means stops the diver, and what comes too late; in metres, as the scale of the water that the ledges lie in.
 * @param wordsOf the word of a means
 * @param said the forecast whose numbers stand on the ledges
 * @param breathes whether a breath moves anything
 */
export function stopsOverlay(
  { rows, way }: StoppingForecast,
  nowS: number,
  wordsOf: (means: StoppingForecast['rows'][number]['means'], way: 1 | -1) => string,
  said: StoppingForecast,
  breathes: boolean,
): StageOverlay {
  // Where nothing needs to be done, harsher means have nothing to say; nor has a breath that moves nothing.
  const alone = rows[0]?.stops
    ? rows.slice(0, 1)
    : rows.filter(({ means }) => means !== 'none' && (breathes || means !== 'breath'));
  const saidM = (means: StoppingForecast['rows'][number]['means']) =>
    said.rows.find((row) => row.means === means)?.depthM;
  const ledges = alone.flatMap(({ means, stops, depthM, timeS }) =>
    stops && depthM !== null && timeS !== null
      ? [{ words: `${wordsOf(means, way)}: ${(saidM(means) ?? depthM).toFixed(1)} m`, atS: nowS + timeS, depthM }]
      : [],
  );
  const lost = alone.filter(({ stops }) => !stops).map(({ means }) => `${wordsOf(means, way)}: too late`);
  return { kind: 'ledges', ledges, lost };
}

/** Where a diver is across a map now. */
export function acrossHere(rig: Rig, state: Readonly<DiveState>, across: RecoveryMap['across']): number {
  if (across.kind === 'lead') return 0;
  if (across.kind === 'speed') return state.speedMps;
  return (state[`${across.of}Mol`] * rig.gasJPerMol) / STANDARD_PRESSURE_PA;
}

/** The recovery map with the diver's dot where he is now, in metric units as the water. @param words the word of each area */
export function mapOverlay(map: RecoveryMap, words: Extract<StageOverlay, { kind: 'map' }>['words']): StageOverlay {
  const { across } = map;
  const [least, most] = [across.values[0]!, across.values.at(-1)!];
  const unit = across.kind === 'gas' ? 1e-3 : across.kind === 'speed' ? 1 / 60 : 1;
  const step = stepFor((most - least) / unit);
  const first = Math.ceil(least / unit / step - 1e-9);
  const ticks = [];
  for (let i = first; i * step * unit <= most * (1 + 1e-9); i++)
    ticks.push({ at: i * step * unit, words: tickWords(across.kind, i * step) });
  const acrossWords =
    across.kind === 'gas'
      ? `litres in the ${across.of}, at the surface`
      : across.kind === 'lead'
        ? 'kg of lead, against now'
        : 'm/min, down to the right';
  return { kind: 'map', maps: [map], acrossWords, ticks, words };
}

function tickWords(kind: RecoveryMap['across']['kind'], value: number): string {
  const shown = String(Math.round(Math.abs(value) * 10) / 10);
  if (kind !== 'lead' || value === 0) return value < 0 ? `−${shown}` : shown;
  return value > 0 ? `+${shown}` : `−${shown}`;
}

/** A round step that makes about five ticks. */
function stepFor(range: number): number {
  return [0.5, 1, 2, 5, 10, 20, 50].find((step) => range / step <= 6) ?? 100;
}
