import type { Path } from './problems.ts';

/** A break of a rule that joins several keys. */
export interface RuleBreak {
  /** The keys that the rule joins; the problem is shown at the first of them that the file gives. */
  readonly at: readonly [Path, ...Path[]];
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

/** A number with at most four digits that count, as a suggestion shows it. */
export function round(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** The rule that one number of a group is at most another of it: no break, or one. */
export function atMost<Group extends object, Key extends keyof Group & string>(
  group: Group,
  path: Path,
  small: Key,
  large: Key,
): RuleBreak[] {
  const [value, limit] = [Number(group[small]), Number(group[large])];
  if (value <= limit) return [];
  return [
    {
      at: [
        [...path, small],
        [...path, large],
      ],
      found: `${small} ${value} above ${large} ${limit}`,
      allowed: `${small} at most ${large}`,
      suggestion: `Write ${small}: ${limit} or less, or a larger ${large}`,
    },
  ];
}
