import { checkYaml } from './checked-yaml.ts';
import { problemText, shown, type Problem } from './problems.ts';
import type { RuleBreak } from './rule-break.ts';
import { completed } from './setup-defaults.ts';
import { wholeRule } from './setup-rules-gear.ts';
import { ruleBreaks } from './setup-rules.ts';
import { setupSchema } from './setup-schema.ts';
import type { Setup } from './setup.ts';
import { soundPart } from './sound-part.ts';
import { readYaml, type YamlText } from './yaml-text.ts';

/**
 * Reads a setup file: YAML of the keys of setup-schema.ts, every one of which may be left out. All problems are found
 * together, in the order of the file; there is at least one when there is no setup. Never throws, whatever the text.
 */
export function readSetup(text: string): { readonly setup: Setup } | { readonly problems: readonly Problem[] } {
  const yaml = readYaml(text);
  if (!('value' in yaml)) return yaml;
  const raw = yaml.value;
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return { problems: [notAGroup(raw, yaml)] };

  const checked = checkYaml(setupSchema, yaml);
  const sound = soundPart(raw, checked.wrong);
  const broken = sound ? ruleBreaks(sound.given, completed(sound.given)) : [];
  const problems = [
    ...checked.problems,
    ...broken.filter(({ at }) => !at.some((path) => sound?.isGone(path))).map((rule) => ruleProblem(rule, yaml)),
  ].sort((a, b) => a.line - b.line);
  if (problems.length > 0 || !checked.output) return { problems };

  const setup = completed(checked.output);
  const whole = wholeRule(setup).map((rule) => ruleProblem(rule, yaml));
  return whole.length > 0 ? { problems: whole } : { setup };
}

/**
 * The setup of a text that is known to be good, such as a file of our own.
 * @throws {TypeError} with every problem, one a line, when it is not good
 */
export function loadSetupText(text: string): Setup {
  const read = readSetup(text);
  if ('setup' in read) return read.setup;
  throw new TypeError(`loadSetupText: the setup has problems\n${read.problems.map(problemText).join('\n')}`);
}

function notAGroup(raw: unknown, yaml: YamlText): Problem {
  return {
    ...yaml.at([]),
    found: raw === null ? 'an empty file' : shown(raw),
    allowed: 'a group of keys: format, name, water, diver, suit …',
    suggestion: 'Begin with the line "format: 1"; every key left out takes its default',
  };
}

function ruleProblem({ at, found, allowed, suggestion }: RuleBreak, yaml: YamlText): Problem {
  return { ...yaml.at(at.find((path) => yaml.has(path)) ?? at[0]), found, allowed, suggestion };
}
