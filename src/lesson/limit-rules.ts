import type { DetailBreak } from './detail-rules.ts';
import type { GivenLesson } from './lesson-schema.ts';
import { USUAL_LIMITS } from './limits.ts';

/** Rules about what marks ask for: limits fit each other, and the rate that is drawn is the rate that is marked. */
export function limitRules({ markLimits = { why: '' }, marks, steps }: GivenLesson): DetailBreak[] {
  const limits = { ...USUAL_LIMITS, ...markLimits };
  const broken: DetailBreak[] = [];
  if (limits.fastMpmin <= limits.ascentMpmin)
    broken.push({
      at: ['markLimits'],
      found: `fastMpmin ${limits.fastMpmin} with ascentMpmin ${limits.ascentMpmin}`,
      allowed: 'fastMpmin above ascentMpmin',
      suggestion: `Write fastMpmin: ${2 * limits.ascentMpmin}, for example`,
    });
  if (marks.length === 0 && Object.keys(markLimits).length > 1)
    broken.push({
      at: ['markLimits'],
      found: 'limits of marks in a lesson without marks',
      allowed: 'markLimits with marks',
      suggestion: 'Delete markLimits, or add what is to be marked',
    });
  for (const { mark, travel, surface } of marks)
    steps.forEach((step, i) => {
      if (step.kind !== 'fly' || mark === 'hover' || (step.id !== travel && step.id !== surface)) return;
      const [key, name] =
        mark === 'ascent' ? (['upMpmin', 'ascentMpmin'] as const) : (['downMpmin', 'descentMpmin'] as const);
      const drawn = step.limits?.[key] ?? null;
      if (drawn === null || drawn === limits[name]) return;
      broken.push({
        at: ['steps', i, 'limits', key],
        found: `${drawn}, while ${mark} is marked at ${limits[name]} m/min`,
        allowed: 'the rate that the mark asks for, or none',
        suggestion: `Write ${limits[name]}, or markLimits: { ${name}: ${drawn}, why: … }`,
      });
    });
  return broken;
}
