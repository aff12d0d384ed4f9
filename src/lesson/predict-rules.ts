import type { GivenPredict } from './lesson-schema.ts';
import { PARAMETERS, TOPICS, type TopicShape } from './topics.ts';

/** A break of a rule that joins several keys of a step. */
export interface StepBreak {
  /** Key of the step at which it is shown; the step itself when the file has no such key. */
  readonly key: string;
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

const SCALE = ['unit', 'least', 'most', 'step', 'within'] as const;
const SHAPE_KEYS = {
  choice: ['options'],
  number: SCALE,
  place: SCALE,
  curve: [...SCALE, 'along', 'alongUnit'],
  order: ['items'],
} as const;
const ALL_SHAPE_KEYS = ['options', ...SCALE, 'along', 'alongUnit', 'items'] as const;
/** A choice in words like these is a number of this setup. */
const QUANTITY = /^\D{0,12}\d+(?:[.,]\d+)?\s*(?:L|m|s|kg|kgf|bar|litres?|metres?|seconds?|m\/min)\b/i;

/** Rules of a prediction: keys of its shape and no others, and an answer that the model computes wherever it can. */
export function predictRules(step: GivenPredict): StepBreak[] {
  return [...shapeRules(step), ...(step.topic === undefined ? typedRules(step) : topicRules(step, TOPICS[step.topic]))];
}

function shapeRules(step: GivenPredict): StepBreak[] {
  const broken: StepBreak[] = [];
  const keys: readonly string[] = SHAPE_KEYS[step.shape];
  for (const key of ALL_SHAPE_KEYS) {
    const wanted = keys.includes(key);
    if (wanted === (step[key] !== undefined)) continue;
    const shapeIs = `shape ${step.shape}`;
    broken.push({
      key,
      found: wanted ? `no ${key} with ${shapeIs}` : `${key} with ${shapeIs}`,
      allowed: `with ${shapeIs} the keys ${keys.join(', ')}`,
      suggestion: wanted ? `Add ${key}` : `Delete ${key}`,
    });
  }
  if (step.least !== undefined && step.most !== undefined && step.least >= step.most)
    broken.push({
      key: 'least',
      found: `least ${step.least} with most ${step.most}`,
      allowed: 'least below most',
      suggestion: 'Write a smaller least',
    });
  const ids = (step.options ?? step.items ?? []).map(({ id }) => id);
  const twice = ids.find((id, i) => ids.indexOf(id) < i);
  if (twice !== undefined)
    broken.push({
      key: step.options ? 'options' : 'items',
      found: `${twice} twice`,
      allowed: 'a different id for each',
      suggestion: `Rename one ${twice}`,
    });
  return broken;
}

function topicRules(step: GivenPredict, topic: TopicShape): StepBreak[] {
  const broken: StepBreak[] = [];
  if (step.answer !== undefined)
    broken.push({
      key: 'answer',
      found: `a typed-in answer to ${step.topic}`,
      allowed: 'no answer: the model computes it from this very setup',
      suggestion: 'Delete answer',
    });
  if (topic.shape !== step.shape)
    broken.push({
      key: 'shape',
      found: `shape ${step.shape} with ${step.topic}`,
      allowed: `shape ${topic.shape}`,
      suggestion: `Write shape: ${topic.shape}`,
    });
  for (const key of PARAMETERS) {
    const needed = topic.needs.includes(key);
    if (needed === (step[key] !== undefined)) continue;
    const metres = key.endsWith('M') ? ', in metres' : '';
    broken.push({
      key,
      found: needed ? `no ${key} with ${step.topic}` : `${key} with ${step.topic}`,
      allowed: topic.needs.length > 0 ? `with this topic ${topic.needs.join(', ')}` : 'nothing but the topic',
      suggestion: needed ? `Add ${key}${metres}` : `Delete ${key}`,
    });
  }
  if ('unit' in topic && step.unit !== undefined && step.unit !== topic.unit)
    broken.push({ key: 'unit', found: step.unit, allowed: topic.unit, suggestion: `Write unit: ${topic.unit}` });
  if (topic.shape === 'curve' && step.alongUnit !== undefined && step.alongUnit !== topic.along)
    broken.push({
      key: 'alongUnit',
      found: step.alongUnit,
      allowed: topic.along,
      suggestion: `Write alongUnit: ${topic.along}`,
    });
  if (topic.shape === 'choice' && step.options && step.shape === 'choice') {
    const ids = step.options.map(({ id }) => id);
    const same = ids.length === topic.outcomes.length && topic.outcomes.every((outcome) => ids.includes(outcome));
    if (!same)
      broken.push({
        key: 'options',
        found: ids.join(', '),
        allowed: `each outcome once: ${topic.outcomes.join(', ')}`,
        suggestion: 'Give every outcome its option, so that the true one is among them',
      });
  }
  const odd = topic.shape === 'order' ? (step.items ?? []).find(({ id }) => !/^m\d{1,2}$/.test(id)) : undefined;
  if (odd)
    broken.push({
      key: 'items',
      found: odd.id,
      allowed: 'depths in metres as ids: m3, m10',
      suggestion: 'Write m and the depth',
    });
  return broken;
}

/** Without a topic the answer is typed in: only where it is no number and no outcome that the model could compute. */
function typedRules(step: GivenPredict): StepBreak[] {
  const stray = PARAMETERS.filter((key) => step[key] !== undefined).map((key) => ({
    key,
    found: `${key} without a topic`,
    allowed: 'no parameters: nothing is computed from them',
    suggestion: `Delete ${key}, or write a topic`,
  }));
  if (step.shape !== 'choice')
    return [
      ...stray,
      {
        key: 'topic',
        found: `no topic with shape ${step.shape}`,
        allowed: `a topic: ${Object.keys(TOPICS).join(', ')}`,
        suggestion: 'Numbers, places, curves and orders are computed by the model: write their topic, and no answer',
      },
    ];
  const broken: StepBreak[] = [...stray];
  const ids = (step.options ?? []).map(({ id }) => id);
  for (const [name, topic] of Object.entries(TOPICS) as [string, TopicShape][])
    if (topic.shape === 'choice' && ids.length > 1 && ids.every((id) => topic.outcomes.includes(id)))
      broken.push({
        key: step.answer === undefined ? 'topic' : 'answer',
        found: 'a typed-in answer that the model can compute',
        allowed: `topic: ${name}`,
        suggestion: `Write topic: ${name} and delete answer`,
      });
  if ((step.options ?? []).some(({ words }) => QUANTITY.test(words)))
    broken.push({
      key: 'options',
      found: 'quantities to choose from, with a typed-in answer',
      allowed: 'shape number with a topic',
      suggestion: 'Ask for the number: the model computes it from this very setup',
    });
  if (broken.length === 0 && !ids.some((id) => id === step.answer))
    broken.push({
      key: 'answer',
      found: step.answer === undefined ? 'no answer and no topic' : String(step.answer),
      allowed: `a topic, or one of ${ids.join(', ')}`,
      suggestion: 'Write a topic that the model computes, or the id of the right option',
    });
  return broken;
}
