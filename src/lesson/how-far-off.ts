import type { PredictShape } from './predict.ts';
import type { Answer } from './run.ts';
import type { Truth } from './truth.ts';

/**
 * How far what came is from what was said, in words: "2.4 m deeper", "0.8 L more", "most at 20 m: 0.34 L less", "2 of 4 in their
 * places". null for a choice, for what was passed over, and where nothing of it would be seen in the digits that are shown.
 */
export function howFarOff(step: PredictShape, said: Answer, came: Truth): string | null {
  if (said === null || step.shape === 'choice') return null;
  if (step.shape === 'number' || step.shape === 'place') {
    const { unit } = step;
    return differenceWords(Number(came) - Number(said), unit, 1, step.shape === 'place' ? DEPTH : AMOUNT);
  }
  if (step.shape === 'curve') {
    const differences = (came as readonly number[]).map((value, i) => value - Number((said as readonly number[])[i]));
    const worst = differences.reduce((at, one, i) => (Math.abs(one) > Math.abs(differences[at]!) ? i : at), 0);
    const words = differenceWords(differences[worst]!, step.unit, curveDigits(step.step), AMOUNT);
    return words && `most at ${step.along[worst]} ${step.alongUnit}: ${words}`;
  }
  const [mine, model] = [said, came].map((one) => (Array.isArray(one) ? one : [one]).map(String)) as [
    string[],
    string[],
  ];
  const placed = model.filter((id, i) => mine[i] === id).length;
  return placed === model.length ? null : `${placed} of ${model.length} in their places`;
}

/** Digits of a curve's values, as they are shown. */
export const curveDigits = (step: number): number => (step < 0.1 ? 2 : 1);

type More = readonly [more: string, less: string];
const DEPTH: More = ['deeper', 'shallower'];
const AMOUNT: More = ['more', 'less'];

function differenceWords(difference: number, unit: string, digits: number, [more, less]: More): string | null {
  const amount = Math.abs(difference).toFixed(digits);
  return Number(amount) === 0 ? null : `${amount} ${unit} ${difference > 0 ? more : less}`;
}
