/**
 * How many letters must be left out, added, changed or swapped with their neighbour to turn one word into the other.
 * Capitals count as small letters.
 */
export function editDistance(one: string, other: string): number {
  const a = one.toLowerCase();
  const b = other.toLowerCase();
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2] + 1);
      row.push(least);
    }
    before = above;
    above = row;
  }
  return above[b.length];
}

/**
 * The word of a list that was most likely meant, or undefined when none is near: it begins with what was written, or at most a
 * third of its letters differ, with or without the unit at its end.
 */
export function nearest(word: string, words: readonly string[]): string | undefined {
  const given = word.toLowerCase();
  // Longer than any key by far: nothing to compare, and a comparison of two long texts is slow.
  if (given.length > 40) return undefined;
  let best: { word: string; distance: number } | undefined;
  for (const candidate of words) {
    const begins = given.length >= 3 && candidate.toLowerCase().startsWith(given);
    for (const form of [candidate, candidate.replace(/(?:KgPerM3|[A-Z][a-z]*\d?)$/, '')]) {
      const distance = begins ? 0.5 : editDistance(word, form);
      if (distance > Math.max(1, Math.floor(form.length / 3))) continue;
      if (!best || distance < best.distance) best = { word: candidate, distance };
    }
  }
  return best?.word;
}

/** What to write where a number from `least` to `most` belongs: the number in a text, the nearest bound, or another unit. */
export function suggestNumber(found: unknown, least: number, most: number): string {
  const fits = (value: number) => value >= least && value <= most;
  if (typeof found === 'string') {
    const digits = /[-+]?\d+(?:[.,]\d+)?/.exec(found)?.[0].replace(',', '.');
    if (digits !== undefined && fits(Number(digits)))
      return `Write ${Number(digits)}, a bare number: the unit is in the name of the key`;
    return `Write a bare number such as ${middle(least, most)}`;
  }
  if (typeof found !== 'number' || Number.isNaN(found))
    return `Write a number such as ${middle(least, most)}, or leave the key out`;
  const bound = found < least ? least : most;
  const meant = [-1, 0.001, 0.01, 0.1, 10, 100, 1000]
    .map((factor) => Number((found * factor).toPrecision(12)))
    .find(fits);
  return `Write ${bound}, the nearest allowed${meant === undefined || meant === 0 ? '' : `, or ${meant} if that was meant`}`;
}

/** What to write where one word of a list belongs. */
export function suggestChoice(found: unknown, choices: readonly string[]): string {
  const near = typeof found === 'string' ? nearest(found, choices) : undefined;
  return near === undefined ? `Write ${choices.join(' or ')}` : `Write ${near}`;
}

/** A round number inside a range, as an example. */
function middle(least: number, most: number): number {
  const half = (least + most) / 2;
  return Math.min(most, Math.max(least, Number(half.toPrecision(1))));
}
