import type { Mishap } from '../dive/index.ts';

const STUCK: Readonly<Partial<Record<Mishap['kind'], readonly [begins: string, ends: string]>>> = {
  'inflator-open': ['inflator stuck open', 'inflator shut again'],
  'suit-inflator-open': ['suit inflator stuck open', 'suit inflator shut again'],
  'vent-open': ['vent stuck open', 'vent shut again'],
  'vent-shut': ['vent stuck shut', 'vent works again'],
};

/** What is told on the line of valves that stick: a run holds them as presses, from which nobody could tell them. In order. */
export function stuckWords(mishaps: readonly Mishap[]): { readonly atS: number; readonly words: string }[] {
  return mishaps
    .flatMap((mishap) => {
      const words = STUCK[mishap.kind];
      if (!words || !('forS' in mishap)) return [];
      const { atS, forS } = mishap;
      return [
        { atS, words: words[0] },
        { atS: atS + forS, words: words[1] },
      ];
    })
    .sort((a, b) => a.atS - b.atS);
}
