import type { MarkId } from './lesson.ts';
import { LIMIT_NAMES, markLimits, type LessonLimits, type MarkLimits } from './limits.ts';
import { plain } from './words.ts';

/** Each limit in words, with why it is that one as long as a lesson says nothing else. */
const SAID: Readonly<Record<keyof MarkLimits, { readonly words: (value: string) => string; readonly why: string }>> = {
  ascentMpmin: {
    words: (value) => `${value} m/min on the way up`,
    why: '30 ft/min: US Navy Diving Manual, revision 7, section 9-6.3.',
  },
  fastMpmin: {
    words: (value) => `never above ${value} m/min for 3 s on the way up`,
    why: 'Practice: twice the usual rate is a loss of control, whoever it is.',
  },
  descentMpmin: {
    words: (value) => `${value} m/min on the way down`,
    why: 'Practice: slow enough to stop with a breath and a short press.',
  },
  excessM: {
    words: (value) => `${value} m climbed above the rate`,
    why: 'Practice: a breath too deep is forgiven, a lift is not.',
  },
  inBandPercent: {
    words: (value) => `${value} % of a hold in its place`,
    why: 'Practice: a breath or a look away is forgiven.',
  },
  finsNs: {
    words: (value) => `${value} N s of fins in a hold`,
    why: 'Practice: one soft kick, which costs points; more of it would hide what the gas should do.',
  },
};

/** Which limits a mark asks about. */
const ASKED: Readonly<Record<MarkId, readonly (keyof MarkLimits)[]>> = {
  descent: ['descentMpmin', 'inBandPercent'],
  hover: ['inBandPercent', 'finsNs'],
  ascent: ['ascentMpmin', 'fastMpmin', 'excessM', 'inBandPercent'],
};

/** A limit in force, in words, with its reason. */
export interface LimitInForce {
  readonly id: keyof MarkLimits;
  readonly words: string;
  readonly why: string;
  /** The lesson's own. */
  readonly changed: boolean;
}

/** The limits that marks of a lesson ask about, each with its reason; those of a lesson's own with the lesson's. */
export function limitsInForce(own: LessonLimits, marks: readonly MarkId[]): LimitInForce[] {
  const asked = new Set(marks.flatMap((mark) => ASKED[mark]));
  const limits = markLimits(own?.change ?? {});
  return LIMIT_NAMES.filter((id) => asked.has(id)).map((id) => {
    const changed = own?.change[id] !== undefined;
    return { id, words: SAID[id].words(plain(limits[id])), why: changed ? own!.why : SAID[id].why, changed };
  });
}
