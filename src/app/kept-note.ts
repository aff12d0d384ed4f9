import { TICKS_PER_S, type Dive } from '../dive/index.ts';
import type { KeptNote } from '../panels/index.ts';
import type { Keeping, KeptDive } from '../store/index.ts';

/** What is said over the water of a dive that is kept: one at a time. */
export type Said =
  /** The last dive, from long ago. */
  | { readonly kind: 'offer'; readonly kept: KeptDive; readonly keeping: Keeping }
  /** The last dive, in hand again at a tick; whether as a lesson, and on the very bits that it ended on. */
  | {
      readonly kind: 'back';
      readonly kept: KeptDive;
      readonly dive: Dive;
      readonly tick: number;
      readonly lesson: boolean;
      readonly same: boolean;
    }
  /** The dive that was left for another diver, and since which tick of that one's it is said. */
  | {
      readonly kind: 'left';
      readonly id: number;
      readonly dive: Dive;
      readonly fromTick: number;
      readonly leftTick: number;
    };

/** So much of the next dive passes while it is said that the one before is kept. */
const LEFT_SAID_TICKS = 10 * TICKS_PER_S;

/**
 * Whether it is still to be said.
 * @param dive the one in hand
 * @param untouched whether nobody has done anything yet
 */
export function stillSaid(said: Said, dive: Pick<Dive, 'tick'>, untouched: () => boolean): boolean {
  switch (said.kind) {
    case 'offer':
      return untouched();
    case 'back':
      return said.dive === dive && said.tick === dive.tick;
    case 'left':
      return said.dive === dive && dive.tick - said.fromTick <= LEFT_SAID_TICKS;
  }
}

/**
 * In words.
 * @param clock a dive's ticks as a time
 */
export function noteOf(said: Said, clock: (ticks: number) => string): KeptNote {
  const { kind } = said;
  if (kind === 'left') {
    const words = `Your dive before is kept, as it was at ${clock(said.leftTick)}: it stands under more.`;
    return { kind, lesson: false, words };
  }
  const { beside, pair, lessonId, run } = said.kept;
  const lesson = kind === 'back' ? said.lesson : lessonId !== null;
  const [what, at] = [lesson ? 'lesson' : 'dive', clock(run.ticks)];
  if (kind === 'offer') return { kind, lesson, words: `Your last ${what} is kept, as it was at ${at}.` };
  const changed = said.same ? '' : ' It does not end as it did: the model has changed since.';
  const alone = beside === 'damaged' ? ' Its other lines and bookmarks were damaged and are left out.' : '';
  const single = pair === 'damaged' ? ' Its second diver was damaged and is left out.' : '';
  return { kind, lesson, words: `Your ${what} is back, as it was at ${at}.${changed}${alone}${single}` };
}
