import type { Means, NeutralDepth, Reach, Shares, Steepness, Stopping, StoppingForecast } from '../insight/index.ts';
import type { GasStore } from './readings.ts';
import type { Units } from './settings.ts';
import { depthText, litresText, massApartKg, massText } from './units.ts';

export { unbroken } from './unbroken.ts';

/** A small drift, and twice as much, as both systems would say it: 10 cm, four inches. */
const OFF = { metric: ['10 cm', '20 cm'], imperial: ['4 inches', '8 inches'] } as const;
/** Pulled back by more than this where he turns, newtons, a diver does not stay there: 0.1 kgf, as for the word neutral. */
const CARRIED_N = 0.980665;
const STILL_LOOP = 'Breath moves nothing here';

/** How the means are called, by what the diver has to let gas in and out of. */
export function meansWords(means: Means, of: 'jacket' | 'suit' | 'loop', way: 1 | -1): string {
  const gas = gasWords(of);
  const words: Record<Means, string> = {
    none: 'nothing done',
    breath: 'breath',
    fins: 'fins',
    gas: way < 0 ? `venting ${gas}` : gas,
    all: 'all together',
    lead: 'all, lead dropped',
  };
  return words[means];
}

/** What stands in the areas of a recovery map. */
export function mapWords(of: 'jacket' | 'suit' | 'loop'): Readonly<Record<Means | 'lost', string>> {
  return {
    none: 'nothing needed',
    breath: 'breath alone',
    fins: 'fins',
    gas: gasWords(of),
    all: 'all together',
    lead: 'lead dropped',
    lost: 'too late',
  };
}

/** The same within a sentence. */
function saidOf(means: Means, of: 'jacket' | 'suit' | 'loop', way: 1 | -1): string {
  if (means === 'gas') return way < 0 ? `venting the ${gasWords(of)}` : `the ${gasWords(of)}`;
  if (means === 'all') return 'all means together';
  if (means === 'lead') return 'only dropping the lead besides';
  return meansWords(means, of, way);
}

/** Whether the words of saidOf() are more than one thing. */
function isSeveral(means: Means, of: 'jacket' | 'suit' | 'loop', way: 1 | -1): boolean {
  return means === 'fins' || means === 'all' || (means === 'gas' && of !== 'jacket' && way > 0);
}

function gasWords(of: 'jacket' | 'suit' | 'loop'): string {
  return of === 'loop' ? 'loop and jacket' : of === 'suit' ? 'suit and jacket' : 'jacket';
}

/**
 * "Breath alone balances you from 6.8 to 20.7 m; half a breath is neutral at 9.4 m."
 * @param openLungs false on the closed loop, where a breath lifts nothing
 */
export function reachWords(
  reachM: readonly [number, number] | null,
  neutral: readonly NeutralDepth[],
  depthM: number,
  netN: number,
  units: Units,
  openLungs = true,
): string {
  const middle = nearest(neutral, depthM);
  if (!openLungs) {
    const where = middle ? `; you are neutral at ${depthText(middle.depthM, units)}` : '';
    return `On the closed loop a breath lifts nothing${where}.`;
  }
  if (!reachM) return `No breath balances you here: you are ${netN > 0 ? 'light' : 'heavy'} whatever you breathe.`;
  const at = middle ? `; half a breath is neutral at ${depthText(middle.depthM, units)}` : '';
  return `Breath alone balances you from ${spanText(reachM, units)}${at}.`;
}

/** "Neutral at 9.4 m: off it by 10 cm, twice as far in 4.6 s." */
export function neutralWords(neutral: readonly NeutralDepth[], depthM: number, netN: number, units: Units): string {
  const at = nearest(neutral, depthM);
  if (!at)
    return netN > 0
      ? 'Neutral nowhere in this water: light all the way up.'
      : 'Neutral nowhere in this water: heavy all the way down.';
  const where = depthText(at.depthM, units);
  if (at.stable && at.depthM < 0.3) return 'At the surface neutral holds: what comes out of the water weighs you down.';
  if (at.stable)
    return at.periodS === null
      ? `Neutral at ${where} holds: the denser water below carries you.`
      : `Layer: neutral at ${where} holds; you swing once in ${seconds(at.periodS)}.`;
  if (at.eFoldingS === null) return `Neutral at ${where}, and it does not hold.`;
  return `Neutral at ${where}: off it by ${OFF[units][0]}, twice as far in ${seconds(at.eFoldingS * Math.LN2)}.`;
}

/** "A drift of 10 cm becomes 20 cm in 4.0 s; 55 % of that is the jacket and 40 % the suit." */
export function steepnessWords({ shares, doublingS }: Pick<Steepness, 'shares' | 'doublingS'>, units: Units): string {
  const words: Record<keyof Shares, string> = {
    suit: 'the suit',
    jacket: 'the jacket',
    drysuit: 'the drysuit’s gas',
    loop: 'the loop',
    lungs: 'the held breath',
    gut: 'the gut',
    water: 'the water',
    surface: 'the surface',
  };
  const all = Object.entries(shares) as [keyof Shares, number][];
  const up = all.filter(([, share]) => share > 0);
  const total = up.reduce((sum, [, share]) => sum + share, 0);
  if (doublingS === null)
    return shares.water < shares.surface
      ? 'A hollow, no hill: the denser water below holds, and who is pushed off comes back.'
      : 'A hollow, no hill: what comes out of the water weighs down, and who is pushed off comes back.';
  const parts = up
    .sort((a, b) => b[1] - a[1])
    .map(([part, share]) => [words[part], Math.round((share / total) * 100)] as const)
    .filter(([, percent]) => percent >= 3)
    .map(([word, percent], i) => `${percent} %${i === 0 ? ' of that is' : ''} ${word}`);
  return `A drift of ${OFF[units][0]} becomes ${OFF[units][1]} in ${seconds(doublingS)}; ${listed(parts)}.`;
}

/** "4.0 L of gas in the jacket would be 8.0 L at the surface: 2.0 times as much." About the store that grows most. */
export function volumesWords(stores: readonly GasStore[]): string {
  const grows = ({ hereM3, surfaceM3 }: GasStore) => surfaceM3 - hereM3;
  const most = [...stores].sort((a, b) => grows(b) - grows(a))[0];
  if (!most || grows(most) < 5e-5) return 'All gas has the size that it has at the surface.';
  const times = (most.surfaceM3 / most.hereM3).toFixed(1);
  return `${litresText(most.hereM3)} of gas in the ${most.name} would be ${litresText(most.surfaceM3)} at the surface: ${times} times as much.`;
}

/**
 * "14.2 kg hold you up and 14.6 kg pull you down: 0.4 kg (3.9 N) more down, now, with this breath."
 * @param upKg as it is written, like what pulls down: what is more is what these two leave
 * @param netN up positive
 */
export function ledgerWords(upKg: number, downKg: number, netN: number, units: Units): string {
  const kg = massApartKg(upKg, downKg, units);
  const sides = `${massText(upKg, units)} hold you up and ${massText(downKg, units)} pull you down`;
  const newtons = Math.abs(netN).toFixed(1);
  const more =
    Math.abs(kg) < 0.05 ? 'balanced' : `${massText(Math.abs(kg), units)} (${newtons} N) more ${kg > 0 ? 'up' : 'down'}`;
  return `${sides}: ${more}, now, with this breath.`;
}

/**
 * The same of who floats: what is out of the water takes off what there is too much, now more, now less, and no surplus is said.
 * @param downKg what pulls him down without it
 */
export function afloatWords(upKg: number, downKg: number, units: Units): string {
  const sides = `${massText(upKg, units)} hold you up, ${massText(downKg, units)} pull you down`;
  return `Afloat: ${sides}, and what is out of the water takes off the rest.`;
}

/** A stopping forecast with what its sentence needs besides. */
export interface StoppingWords {
  readonly forecast: StoppingForecast;
  /** Net force in the middle of the breath where doing nothing ends the motion, newtons, up positive; null where it does not. */
  readonly restN: number | null;
  readonly depthM: number;
  readonly of: 'jacket' | 'suit' | 'loop';
}

/** "Too late for breath; fins stop you at 14.2 m, in 9 s, and each second of waiting costs 0.5 m." */
export function stoppingWords({ forecast, restN, depthM, of }: StoppingWords, units: Units): string {
  const { way, rows } = forecast;
  const works = rows.find(({ stops }) => stops);
  const end = way > 0 ? 'before you reach the floor' : 'before you are at the surface';
  if (!works) return `Nothing stops you any more ${end}.`;
  const where = works.depthM === null ? '' : ` at ${depthText(works.depthM, units)}`;
  if (works.means === 'none') {
    if (restN !== null && restN * way > CARRIED_N)
      return `You turn${where} by yourself, and then ${way > 0 ? 'rise' : 'sink'}.`;
    const still = works.depthM !== null && Math.abs(works.depthM - depthM) < 0.1 && (works.timeS ?? 0) < 1;
    return still ? 'Nothing needs to be done here.' : `Do nothing, and you come to rest${where} by yourself.`;
  }
  const late = rows.slice(0, rows.indexOf(works)).map(({ means }) => means);
  const name = saidOf(works.means, of, way);
  const when = works.timeS === null ? '' : `, in ${Math.round(works.timeS)} s`;
  return `${tooLate(late, name, of, way)} ${isSeveral(works.means, of, way) ? 'stop' : 'stops'} you${where}${when}${waiting(forecast, works, units)}.`;
}

/** "Too late for breath and fins; the jacket": what no longer works, then what does. On a closed loop a breath never did. */
function tooLate(late: readonly Means[], name: string, of: 'jacket' | 'suit' | 'loop', way: 1 | -1): string {
  const gone = late
    .filter((means) => means === 'fins' || means === 'gas' || (means === 'breath' && of !== 'loop'))
    .map((means) => saidOf(means, of, way));
  if (of === 'loop' && late.includes('breath'))
    return gone.length > 0
      ? `${STILL_LOOP}, and it is too late for ${listed(gone)}; ${name}`
      : `${STILL_LOOP}; ${name}`;
  return gone.length > 0 ? `Too late for ${listed(gone)}; ${name}` : capital(name);
}

/** What a second of waiting costs what is named: metres, or all that it can do. */
function waiting({ rows, pricePerSecondM }: StoppingForecast, works: Stopping, units: Units): string {
  if (pricePerSecondM !== null)
    return pricePerSecondM < 0.05 ? '' : `, and each second of waiting costs ${depthText(pricePerSecondM, units)}`;
  const harsher = rows.slice(rows.indexOf(works) + 1).some(({ stops }) => stops);
  return `, and in a second it is too late${harsher ? ' for that' : ''}`;
}

/** What is said about how deep, or how shallow, a diver may be for each means to bring him back. */
export interface RecoveryWords {
  readonly now: readonly Reach[];
  /** The same with less lead; null where there is not so much to take off. */
  readonly lighter: readonly Reach[] | null;
  readonly lessKg: number;
  readonly depthM: number;
  readonly way: 1 | -1;
  readonly of: 'jacket' | 'suit' | 'loop';
}

/** "With breath alone you recover from as deep as 12.6 m; with 4 kg less lead, from 16.1 m." */
export function recoveryWords({ now, lighter, lessKg, depthM, way, of }: RecoveryWords, units: Units): string {
  const end = (reaches: readonly Reach[] | null, means: Means) => {
    const found = reaches?.find((one) => one.means === means);
    return (way > 0 ? found?.deepestM : found?.shallowestM) ?? null;
  };
  const holds = (means: Means) => {
    const edgeM = end(now, means);
    return edgeM !== null && (edgeM - depthM) * way >= 0;
  };
  const far = (edgeM: number) => `as ${way > 0 ? 'deep' : 'shallow'} as ${depthText(edgeM, units)}`;
  const name = (means: Means) => (means === 'breath' ? 'breath alone' : saidOf(means, of, way));
  const lost = `Nothing brings you back from ${way > 0 ? 'sinking' : 'rising'} any more.`;
  if (of === 'loop') {
    const works = now.find(({ means }) => means !== 'breath' && holds(means))?.means;
    if (!works) return lost;
    const brings =
      works === 'none'
        ? 'you recover by yourself'
        : `${saidOf(works, of, way)} ${isSeveral(works, of, way) ? 'bring' : 'brings'} you back`;
    return `${STILL_LOOP}; ${brings} from ${far(end(now, works)!)}.`;
  }
  const gentlest = now.find(({ means }) => means !== 'none' && holds(means))?.means;
  if (!gentlest) return lost;
  const from = far(end(now, gentlest)!);
  const lighterM = way > 0 ? end(lighter, 'breath') : null;
  const lessLead = `with ${massText(lessKg, units).replace('.0 ', ' ')} less lead`;
  if (gentlest !== 'breath') {
    const verb = isSeveral(gentlest, of, way) ? 'do' : 'does';
    const would =
      lighterM !== null && lighterM > depthM ? `; ${lessLead} it would, from ${depthText(lighterM, units)}` : '';
    return `Breath alone brings you back no more${would}; ${name(gentlest)} ${verb}, from ${from}.`;
  }
  const less =
    lighterM !== null && lighterM > end(now, 'breath')! + 0.05
      ? `; ${lessLead}, from ${depthText(lighterM, units)}`
      : '';
  return `With breath alone you recover from ${from}${less}.`;
}

function nearest(neutral: readonly NeutralDepth[], depthM: number): NeutralDepth | null {
  return neutral.reduce<NeutralDepth | null>(
    (best, one) => (best && Math.abs(best.depthM - depthM) <= Math.abs(one.depthM - depthM) ? best : one),
    null,
  );
}

/** "6.8 to 20.7 m": the unit once. */
function spanText([fromM, toM]: readonly [number, number], units: Units): string {
  const from = fromM <= 0 ? 'the surface' : depthText(fromM, units).replace(/ .*/, '');
  return `${from} to ${depthText(toM, units)}`;
}

function seconds(s: number): string {
  return s < 20 ? `${s.toFixed(1)} s` : `${Math.round(s)} s`;
}

function capital(words: string): string {
  return words[0]!.toUpperCase() + words.slice(1);
}

function listed(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`;
}
