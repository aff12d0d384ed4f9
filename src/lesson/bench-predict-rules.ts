import type { GivenBenchPredict } from './bench-schema.ts';
import { BENCH_PARAMETERS, BENCH_TOPICS, type BenchTopicShape } from './bench-topics.ts';
import { keyRules, type DetailBreak } from './detail-rules.ts';

const SCALE = ['unit', 'least', 'most', 'step'];
const SHAPE_KEYS = {
  choice: ['options'],
  number: [...SCALE, 'within'],
  curve: [...SCALE, 'withinShare', 'along', 'alongUnit'],
} as const;
const ALL_KEYS = ['options', ...SCALE, 'within', 'withinShare', 'along', 'alongUnit'];

/** Rules of a prediction about the bench. @param stands what stands there: a set of the tank, or a column */
export function benchPredictRules(step: GivenBenchPredict, stands: string | undefined): DetailBreak[] {
  const topic: BenchTopicShape = BENCH_TOPICS[step.topic];
  const broken = keyRules(step, `shape ${step.shape}`, SHAPE_KEYS[step.shape], [], ALL_KEYS);
  broken.push(...keyRules(step, step.topic, topic.needs, [], BENCH_PARAMETERS));
  const say = (key: string, found: string, allowed: string, suggestion = `Write ${key}: ${allowed}`) =>
    broken.push({ at: [key], found, allowed, suggestion });
  if (topic.at !== stands)
    say('topic', `${step.topic} where ${stands ?? 'nothing'} stands`, `a topic of what stands there`, 'Ask another');
  if (topic.shape !== step.shape) say('shape', `shape ${step.shape} with ${step.topic}`, topic.shape);
  if (topic.of && step.of !== undefined && !topic.of.includes(step.of))
    say('of', step.of, topic.of.join(' or '), `Write of: ${topic.of[0] ?? ''}`);
  if ('unit' in topic && step.unit !== undefined && step.unit !== topic.unit) say('unit', step.unit, topic.unit);
  if (topic.shape === 'curve' && step.alongUnit !== undefined && step.alongUnit !== topic.along)
    say('alongUnit', step.alongUnit, topic.along);
  if (step.least !== undefined && step.most !== undefined && step.least >= step.most)
    say('least', `least ${step.least} with most ${step.most}`, 'least below most', 'Write a smaller least');
  if (topic.shape === 'choice' && step.options) {
    const ids = step.options.map(({ id }) => id);
    const same = ids.length === topic.outcomes.length && topic.outcomes.every((outcome) => ids.includes(outcome));
    if (!same)
      say(
        'options',
        ids.join(', '),
        `each outcome once: ${topic.outcomes.join(', ')}`,
        'Give every outcome its option, so that the true one is among them',
      );
  }
  return broken;
}
