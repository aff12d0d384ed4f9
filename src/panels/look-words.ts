import type { Means, NeutralDepth, Reach, Shares, StoppingForecast } from '../insight/index.ts';
import type { Units } from './settings.ts';
import { depthText, massText } from './units.ts';

/** The sentence with its numbers kept beside their units where it breaks. */
export function unbroken(sentence: string): string {
  return sentence.replace(/(\d) (?=(m|cm|s|kg|ft|lb|%)(\W|$))/g, '$1\u00a0');
}

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

function gasWords(of: 'jacket' | 'suit' | 'loop'): string {
  return of === 'loop' ? 'loop and jacket' : of === 'suit' ? 'suit and jacket' : 'jacket';
}

/** "Breath alone balances you from 6.8 to 20.7 m; neutral at 9.4 m." */
export function reachWords(
  reachM: readonly [number, number] | null,
  neutral: readonly NeutralDepth[],
  depthM: number,
  netN: number,
  units: Units,
): string {
  const middle = nearest(neutral, depthM);
  if (!reachM) return `No breath balances you here: you are ${netN > 0 ? 'light' : 'heavy'} whatever you breathe.`;
  const at = middle ? `; half a breath is neutral at ${depthText(middle.depthM, units)}` : '';
  return `Breath alone balances you from ${spanText(reachM, units)}${at}.`;
}

/** "Neutral at 9.4 m: off it by ${units === 'metric' ? '10 cm' : '4 in'}, twice as far in 4.6 s." */
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
  return `Neutral at ${where}: off it by 10 cm, twice as far in ${seconds(at.eFoldingS * Math.LN2)}.`;
}

/** "Of the steepness the suit makes 40 %, the jacket 55 %." */
export function steepnessWords(kNPerM: number, shares: Shares): string {
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
  if (kNPerM <= 0)
    return shares.water < shares.surface
      ? 'A hollow, no hill: the denser water below holds, and who is pushed off comes back.'
      : 'A hollow, no hill: what comes out of the water weighs down, and who is pushed off comes back.';
  const parts = up
    .sort((a, b) => b[1] - a[1])
    .map(([part, share]) => [words[part], Math.round((share / total) * 100)] as const)
    .filter(([, percent]) => percent >= 3)
    .map(([word, percent], i) => `${word}${i === 0 ? ' makes' : ''} ${percent} %`);
  return `Of the steepness here ${listed(parts)}.`;
}

/** "Too late for breath; fins stop you at 14.2 m, in 9 s, and each second of waiting costs 0.5 m." */
export function stoppingWords(
  { way, rows, pricePerSecondM }: StoppingForecast,
  of: 'jacket' | 'suit' | 'loop',
  depthM: number,
  units: Units,
): string {
  const works = rows.find(({ stops }) => stops);
  const end = way > 0 ? 'before you reach the floor' : 'before you are at the surface';
  if (!works) return `Nothing stops you any more ${end}.`;
  const where = works.depthM === null ? '' : ` at ${depthText(works.depthM, units)}`;
  const still = works.depthM !== null && Math.abs(works.depthM - depthM) < 0.1 && (works.timeS ?? 0) < 1;
  if (works.means === 'none')
    return still ? 'Nothing needs to be done here.' : `Do nothing, and you come to rest${where} by yourself.`;
  const late = rows.filter(({ means, stops }) => !stops && means !== 'none').map(({ means }) => means);
  const gentler = late.filter((means) => means === 'breath' || (means === 'fins' && works.means !== 'breath'));
  const name = saidOf(works.means, of, way);
  const lead = gentler.length > 0 ? `Too late for ${listed(gentler)}; ${name}` : capital(name);
  const stop = works.means === 'fins' || works.means === 'all' ? 'stop' : 'stops';
  const when = works.timeS === null ? '' : `, in ${Math.round(works.timeS)} s`;
  const price =
    pricePerSecondM === null || pricePerSecondM < 0.05
      ? ''
      : `, and each second of waiting costs ${depthText(pricePerSecondM, units)}`;
  return `${lead} ${stop} you${where}${when}${price}.`;
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
  const gentlest = now.find(({ means }) => means !== 'none' && holds(means))?.means;
  if (!gentlest) return `Nothing brings you back from ${way > 0 ? 'sinking' : 'rising'} any more.`;
  const from = far(end(now, gentlest)!);
  const lighterM = way > 0 ? end(lighter, 'breath') : null;
  const lessLead = `with ${massText(lessKg, units).replace('.0 ', ' ')} less lead`;
  if (gentlest !== 'breath') {
    const verb = gentlest === 'fins' || gentlest === 'all' ? 'do' : 'does';
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
