import * as v from 'valibot';
import type { Path } from './problems.ts';
import { setupSchema, type GivenSetup } from './setup-schema.ts';

/** What is left of a file's data when everything wrong is taken out. */
export interface SoundPart {
  readonly given: GivenSetup;
  /** Whether what stands at a path, or something around it, was taken out. */
  isGone(path: Path): boolean;
}

/**
 * The sound part of a file, so that the rules between keys can be judged in it; undefined when there is none.
 * @param wrong paths of what is wrong; they need not exist
 */
export function soundPart(raw: object, wrong: readonly Path[]): SoundPart | undefined {
  const gone = new Set<string>();
  const around = new Set<string>();
  let next = wrong;
  // First only what is wrong. When the rest cannot stand without it, as a piece of lead without its mass, its section too.
  for (let round = 0; round < 3; round++) {
    for (const path of next) {
      gone.add(JSON.stringify(path));
      path.forEach((_, i) => around.add(JSON.stringify(path.slice(0, i))));
    }
    const left = v.safeParse(setupSchema, taken(raw, gone, around, []));
    if (left.success)
      return {
        given: left.output,
        isGone: (path) => path.some((_, i) => gone.has(JSON.stringify(path.slice(0, i + 1)))),
      };
    next = left.issues.map((issue) => (issue.path ?? []).slice(0, 1).map((item) => item.key as string));
  }
  return undefined;
}

/**
 * A copy without what stands at some paths. List entries keep their places: one that is taken out leaves null. Goes only
 * into what is around such a path, because a file's data may repeat itself without end.
 */
function taken(value: unknown, gone: ReadonlySet<string>, around: ReadonlySet<string>, path: Path): unknown {
  if (typeof value !== 'object' || value === null || !around.has(JSON.stringify(path))) return value;
  const isGone = (step: string | number) => gone.has(JSON.stringify([...path, step]));
  const inner = (entry: unknown, step: string | number) => taken(entry, gone, around, [...path, step]);
  if (Array.isArray(value)) return value.map((entry, i) => (isGone(i) ? null : inner(entry, i)));
  const kept = Object.entries(value).filter(([key]) => !isGone(key));
  return Object.fromEntries(kept.map(([key, entry]) => [key, inner(entry, key)]));
}
