import type { FlyStep, HoldGoal } from './lesson.ts';

/** A number as people write it: no trailing zeros, at most two digits after the point. */
export function plain(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** The depths between which a phase wants a diver held, metres: those of its goal, or what it asks for besides where that is narrower. */
export function heldBetween(
  { atM, bandM }: HoldGoal,
  keep: FlyStep['keep'],
): { readonly topM: number; readonly bottomM: number } {
  let [topM, bottomM] = [atM - bandM, atM + bandM];
  for (const one of keep) {
    if (one.do !== 'stay' || one.what !== 'depthM' || one.overS > 0) continue;
    topM = Math.max(topM, one.least);
    bottomM = Math.min(bottomM, one.most);
  }
  return { topM, bottomM };
}

/** What a phase asks for, with its limits in the sentence. @param fromM where the phase begins */
export function titleSentence(step: FlyStep, fromM: number): string {
  const { goal, limits, title } = step;
  const rate = (mpmin: number | null) => (mpmin === null ? '' : `, at most ${plain(mpmin)} m/min`);
  switch (goal.kind) {
    case 'float':
      return fromM > 0
        ? `${title}: to the surface${rate(limits.upMpmin)}, head clear for ${plain(goal.forS)} s`
        : `${title}: head clear of the water for ${plain(goal.forS)} s`;
    case 'travel': {
      const down = goal.toM > fromM;
      return `${title}: ${down ? 'down' : 'up'} to ${plain(goal.toM)} m${rate(down ? limits.downMpmin : limits.upMpmin)}`;
    }
    case 'hold': {
      const { topM, bottomM } = heldBetween(goal, step.keep);
      return `${title}: stay between ${plain(topM)} and ${plain(bottomM)} m for ${plain(goal.forS)} s`;
    }
    case 'meet':
      return `${title}: ${goal.says}`;
  }
}
