import type { PairSide } from './pair-view.ts';
import type { Units } from './settings.ts';
import { depthText, litresText, rateParts } from './units.ts';

/** Two values of the same kind, and what the second is more than the first, in words. */
export interface PairRow {
  readonly name: string;
  readonly one: string;
  readonly two: string;
  readonly beside: string;
}

const SAME = 'the same';

/** Both divers row by row: depth, speed, presses, gas used. */
export function pairRows([one, two]: readonly [PairSide, PairSide], units: Units): readonly PairRow[] {
  const of = (name: string, words: (side: PairSide) => string, beside: string): PairRow => ({
    name,
    one: words(one),
    two: words(two),
    beside,
  });
  return [
    of('depth', ({ depthM }) => depthText(depthM, units), besideDepth(one.depthM, two.depthM, units)),
    of('speed', ({ speedMps }) => speedText(speedMps, units), besideSpeed(two.speedMps - one.speedMps, units)),
    of('presses', ({ presses }) => pressText(presses), besidePresses(one.presses, two.presses)),
    of('gas used', ({ gasUsedM3 }) => litres(gasUsedM3), besideGas(two.gasUsedM3 - one.gasUsedM3)),
  ];
}

/** The difference as one sentence: "Diver 2 (2 kg more lead): 5.9 m deeper, …". */
export function pairSentence(sides: readonly [PairSide, PairSide], words: string, units: Units): string {
  const [depth, speed, presses, gas] = pairRows(sides, units);
  const said = [depth!.beside === SAME ? 'as deep' : depth!.beside];
  said.push(speed!.beside === SAME ? 'as fast' : speed!.beside);
  said.push(presses!.beside === SAME ? 'the same presses' : `presses ${presses!.beside}`);
  if (gas!.beside !== SAME) said.push(`${gas!.beside} gas used`);
  return `Diver 2 (${words}): ${said.join(', ')}`;
}

/** How far apart two depths are: "5.9 m deeper", judged by what is shown of each. */
function besideDepth(oneM: number, twoM: number, units: Units): string {
  const apart = depthText(Math.abs(twoM - oneM), units);
  if (apart === depthText(0, units)) return SAME;
  return `${apart} ${twoM > oneM ? 'deeper' : 'shallower'}`;
}

function besideSpeed(moreMps: number, units: Units): string {
  const { word, number, unit } = rateParts(moreMps, units);
  if (word === 'still' || number === '0') return SAME;
  return `${number} ${unit} more ${moreMps > 0 ? 'down' : 'up'}`;
}

function besidePresses(one: PairSide['presses'], two: PairSide['presses']): string {
  const more = two.count - one.count;
  const longerS = two.seconds - one.seconds;
  const parts = [
    ...(more === 0 ? [] : [`${Math.abs(more)} ${more > 0 ? 'more' : 'fewer'}`]),
    ...(Math.abs(longerS) < 0.05 ? [] : [`${Math.abs(longerS).toFixed(1)} s ${longerS > 0 ? 'longer' : 'shorter'}`]),
  ];
  return parts.join(', ') || SAME;
}

function besideGas(moreM3: number): string {
  const apart = litres(Math.abs(moreM3));
  return apart === litres(0) ? SAME : `${apart} ${moreM3 > 0 ? 'more' : 'less'}`;
}

function speedText(speedMps: number, units: Units): string {
  const { word, number, unit } = rateParts(speedMps, units);
  return [word, number, unit].filter(Boolean).join(' ');
}

function pressText({ count, seconds }: PairSide['presses']): string {
  return count === 0 ? 'none' : `${count} in ${seconds.toFixed(1)} s`;
}

/** Whole litres, or tenths of the first ten. */
function litres(volumeM3: number): string {
  return volumeM3 < 0.00995 ? litresText(volumeM3) : `${Math.round(volumeM3 * 1e3)} L`;
}
