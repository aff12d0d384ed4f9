import type { KitDiver, KitHover, KitRow } from './kit-view.ts';
import type { Units } from './settings.ts';
import { depthText, massText } from './units.ts';

/** Less than this, kilograms, is no difference in what a tenth shows. */
const SAME_KG = 0.05;

/** A difference of lead: "+1.5 kg", "−2.3 kg", "no change". */
export function deltaText(deltaKg: number, units: Units): string {
  if (Math.abs(deltaKg) < SAME_KG) return 'no change';
  return `${deltaKg > 0 ? '+' : '−'}${massText(Math.abs(deltaKg), units)}`;
}

/** The lead that is needed: "3.7 kg"; a diver who sinks without any needs none. */
export function neededText(neededKg: number, units: Units): string {
  return massText(Math.max(0, neededKg), units);
}

/** What is carried against what is needed, in words: as lead, and as what that lead pulls under water, where it is lighter. */
export function surplusText({ neededKg, carriedKg, up, down }: KitDiver, units: Units): string {
  const surplusKg = carriedKg - neededKg;
  if (Math.abs(surplusKg) < SAME_KG) return 'just enough';
  const pull = massText(Math.abs(sumKg(down) - sumKg(up)), units);
  return `${massText(Math.abs(surplusKg), units)} too ${surplusKg > 0 ? 'much' : 'little'}: ${pull} of pull in water`;
}

/** "With fresh water instead of sea you need 2.3 kg less." */
export function leadSentence(row: KitRow, units: Units): string {
  const amount = massText(Math.abs(row.deltaKg), units);
  const way = row.deltaKg > 0 ? 'more' : 'less';
  if (row.ofLead) return `You carry ${amount} ${way}; what makes neutral stays the same.`;
  return `${opening(row.change)} you need ${Math.abs(row.deltaKg) < SAME_KG ? 'the same lead' : `${amount} ${way}`}.`;
}

/** A change as the opening of a sentence: rows are short, sentences want their article. */
function opening(change: string): string {
  const words = change.includes(': ') ? `${change.replace(': ', ' (')})` : change;
  if (/^(at|weighed) /.test(words)) return words[0]!.toUpperCase() + words.slice(1);
  return `With ${/^(suit|body of|thicker|thinner|foam|membrane|compressed) /.test(words) ? 'a ' : ''}${words}`;
}

/** Two depths: "6.8 to 20.7 m"; an end at the bottom says so. */
export function reachText({ reachM, bottomM, openLungs }: KitHover, units: Units): string {
  if (!openLungs) return 'a breath lifts nothing';
  if (!reachM) return 'nowhere';
  const from = reachM[0] <= 0 ? 'the surface' : bare(reachM[0], units);
  if (reachM[1] >= bottomM - 0.005) return `${reachM[0] <= 0 ? from : depthText(reachM[0], units)} to the bottom`;
  return `${from} to ${depthText(reachM[1], units)}`;
}

/** Lungs between which breath is looked at: "1.8 to 5.8 L". */
export function lungsText({ lungs: { leastM3, mostM3 } }: KitHover): string {
  return `${(leastM3 * 1e3).toFixed(1)} to ${(mostM3 * 1e3).toFixed(1)} L`;
}

/** "8.8 s"; or that it comes back by itself, or that there is no neutral to drift from. */
export function growthText({ doublingS, leftN }: KitHover): string {
  if (leftN !== 0) return leftN > 0 ? 'too light' : 'too heavy';
  return doublingS === null ? 'comes back' : `${doublingS.toFixed(1)} s`;
}

/** Before and after: "10.1, then 9.0 s"; words where one of them has no seconds, one number where nothing changes. */
export function growthChange(before: KitHover, after: KitHover): string {
  const [was, is] = [growthText(before), growthText(after)];
  if (was === is) return is;
  return `${was.endsWith(' s') && is.endsWith(' s') ? was.slice(0, -2) : was}, then ${is}`;
}

/** A depth that was chosen, without a needless zero: "10 m". */
export function plainDepth(depthM: number, units: Units): string {
  return depthText(depthM, units).replace('.0 ', ' ');
}

/** Where breath alone holds a diver, in a sentence or two. */
export function reachSentence(hover: KitHover, units: Units): string {
  if (!hover.openLungs) return 'On the closed loop a breath lifts nothing.';
  const at = plainDepth(hover.depthM, units);
  const reach = reachText(hover, units);
  if (hover.leftN === 0) return `Breath alone keeps this diver neutral from ${reach}, once neutral at ${at}.`;
  const trouble =
    hover.leftN > 0
      ? `At ${at} this diver is too light even with no gas to spare.`
      : `At ${at} this diver is too heavy even with the jacket full.`;
  return hover.reachM ? `${trouble} Breath alone keeps neutral from ${reach}.` : trouble;
}

/** What a change does to breath reach and steepness, as one sentence. */
export function hoverSentence(before: KitHover, after: KitHover, units: Units): string {
  if (after.leftN !== 0 || before.leftN !== 0 || !after.openLungs) return reachSentence(after, units);
  const now = reachText(after, units);
  const was = reachText(before, units);
  if (now === was) return `Breath alone keeps you neutral from ${now}, as before.`;
  const breath = lungsText(after) === lungsText(before) ? 'alone then' : `alone, then of ${lungsText(after)},`;
  return `Breath ${breath} keeps you neutral from ${now}, before from ${was}.`;
}

function sumKg(pulls: KitDiver['up']): number {
  return pulls.reduce((sum, { kg }) => sum + kg, 0);
}

function bare(depthM: number, units: Units): string {
  return depthText(depthM, units).split(' ')[0] ?? '';
}
