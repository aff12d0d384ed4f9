import { checkYaml, readYaml, type Problem, type YamlText } from '../diver/file.ts';
import type { Rig } from '../diver/index.ts';
import {
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  quantised,
  type ControlChange,
  type Controls,
  type Mishap,
} from '../dive/index.ts';
import { controlsSchema, type GivenChange } from './controls-schema.ts';

const VENTS = { shut: 0, shoulder: 1, rear: 2 } as const;
const BREATHS = { automatic: 0, direct: 1, held: 2 } as const;
const CHANGES_PER_S = TICKS_PER_S / TICKS_PER_CHANGE;

/**
 * Reads a controls file: YAML or JSON, a list of changes, each held until changed. Never throws.
 * @param rig what the controls belong to; left out, only the file itself is checked, not whether the kit has what it works
 */
export function readControls(
  text: string,
  rig?: Rig,
): { readonly given: readonly GivenChange[] } | { readonly problems: readonly Problem[] } {
  const yaml = readYaml(text);
  if (!('value' in yaml)) return yaml;
  const { problems, output } = checkYaml(controlsSchema, yaml);
  if (!output) return { problems };
  const broken = [...orderProblems(output, yaml), ...(rig ? kitProblems(output, rig, yaml) : [])];
  return broken.length > 0 ? { problems: broken.sort((a, b) => a.line - b.line) } : { given: output };
}

/**
 * The changes of controls that a file stands for, each on the next twentieth of a second; ticks from the start of the dive.
 * Those that fall on one twentieth are one change, in which the later one of a control holds.
 */
export function steeringOf(given: readonly GivenChange[], first: Controls): ControlChange[] {
  const changes: ControlChange[] = [{ tick: 0, controls: first }];
  for (const entry of given) {
    // A hair less, so that 0.15 s stays the third twentieth in binary too.
    const tick = Math.max(0, Math.ceil(entry.tS * CHANGES_PER_S - 1e-6)) * TICKS_PER_CHANGE;
    const last = changes[changes.length - 1];
    const together = last.tick === tick;
    // A hand takes one piece and is empty again.
    const held = together ? last.controls : { ...last.controls, handLead: 0 };
    const controls = quantised({ ...held, ...changedBy(entry, held) });
    if (together) changes.pop();
    changes.push({ tick, controls });
  }
  return changes;
}

/** What goes wrong by itself, and when: of the current its keys say how fast it is and for how long. */
export function mishapsOf(given: readonly GivenChange[]): Mishap[] {
  const out: Mishap[] = [];
  for (const { tS: atS, nudgeNs, currentMpmin, currentS, gasLeftBar } of given) {
    if (nudgeNs !== undefined) out.push({ kind: 'nudge', atS, upNs: nudgeNs });
    if (currentMpmin !== undefined && currentS !== undefined)
      out.push({ kind: 'current', atS, downMps: currentMpmin / 60, forS: currentS });
    if (gasLeftBar !== undefined) out.push({ kind: 'gas-low', atS, leftBar: gasLeftBar });
  }
  return out;
}

function changedBy(entry: GivenChange, before: Controls): Partial<Controls> {
  const out: Partial<Record<keyof Controls, number>> = {};
  const switches = ['jacketAdd', 'oral', 'suitAdd', 'suitVent', 'diluent', 'noseVent', 'holdLine', 'ledge'] as const;
  for (const name of switches) if (entry[name] !== undefined) out[name] = entry[name] ? 1 : 0;
  if (entry.jacketVent !== undefined) out.jacketVent = VENTS[entry.jacketVent];
  if (entry.suitValveKPa !== undefined) out.suitValveHPa = entry.suitValveKPa * 10;
  if (entry.breath !== undefined) out.breath = BREATHS[entry.breath];
  if (entry.lungsL !== undefined) out.lungCl = entry.lungsL * 100;
  if (entry.finsN !== undefined) out.finsN = entry.finsN;
  if (entry.pitchDeg !== undefined) Object.assign(out, { attitude: 0, pitchDeg: entry.pitchDeg });
  if (entry.torqueNm !== undefined) Object.assign(out, { attitude: 1, torqueNm: entry.torqueNm });
  if (entry.takeOff !== undefined) out.handLead = entry.takeOff;
  else if (entry.putOn !== undefined) out.handLead = -entry.putOn;
  if (entry.release !== undefined)
    out.releaseMask = entry.release.reduce((mask, piece) => mask | (1 << (piece - 1)), before.releaseMask);
  return out;
}

/** Entries out of order, and keys that do not go together. */
function orderProblems(given: readonly GivenChange[], yaml: YamlText): Problem[] {
  const out: Problem[] = [];
  given.forEach((entry, i) => {
    const before = given[i - 1];
    if (before && entry.tS <= before.tS)
      out.push({
        ...yaml.at([i, 'tS']),
        found: `${entry.tS} after ${before.tS}`,
        allowed: 'changes in order of time, one for each moment',
        suggestion: 'Put the change where its time belongs, or join the two',
      });
    if (entry.pitchDeg !== undefined && entry.torqueNm !== undefined)
      out.push({
        ...yaml.at([i, 'torqueNm']),
        found: 'pitchDeg and torqueNm together',
        allowed: 'one of them: an attitude to hold, or a torque',
        suggestion: 'Delete one of the two',
      });
    if ((entry.currentMpmin === undefined) !== (entry.currentS === undefined)) {
      const [has, lacks] = entry.currentS === undefined ? ['currentMpmin', 'currentS'] : ['currentS', 'currentMpmin'];
      out.push({
        ...yaml.at([i, has]),
        found: `${has} without ${lacks}`,
        allowed: 'both: how fast the water sinks, and for how long',
        suggestion: 'Write { tS: 20, currentMpmin: 12, currentS: 10 }',
      });
    }
  });
  return out;
}

/** What the kit lacks, by the key that works it. */
function kitProblems(given: readonly GivenChange[], rig: Rig, yaml: YamlText): Problem[] {
  const lacks: Partial<Record<keyof GivenChange, string>> = {
    ...(rig.drysuit ? {} : { suitAdd: 'no drysuit', suitVent: 'no drysuit', suitValveKPa: 'no drysuit' }),
    ...(rig.loop ? { oral: 'a closed loop', breath: 'a closed loop', lungsL: 'a closed loop' } : {}),
    ...(rig.loop ? {} : { diluent: 'no closed loop', noseVent: 'no closed loop' }),
    ...(rig.line ? {} : { holdLine: 'no up-line' }),
    ...(rig.ledgeM === null ? { ledge: 'no ledge' } : {}),
    ...(rig.vessels.length > 0 ? {} : { gasLeftBar: 'no cylinder' }),
  };
  return given.flatMap((entry, i) => {
    const missing = (Object.keys(entry) as (keyof GivenChange)[])
      .filter((key) => lacks[key] !== undefined)
      .map((key) => ({
        ...yaml.at([i, key]),
        found: key,
        allowed: `controls of the kit: this setup has ${lacks[key]}`,
        suggestion: `Delete ${key}, or dive another setup`,
      }));
    const fixed = (entry.release ?? [])
      .filter((piece) => !rig.lead[piece - 1]?.releasable)
      .map((piece) => ({
        ...yaml.at([i, 'release']),
        found: `piece ${piece}`,
        allowed: `pieces that can be let go: ${releasable(rig)}`,
        suggestion: 'Write others, or change the setup',
      }));
    return [...missing, ...fixed];
  });
}

function releasable(rig: Rig): string {
  const pieces = rig.lead.flatMap((piece, i) => (piece.releasable ? [i + 1] : []));
  return pieces.length === 0 ? 'none' : pieces.join(', ');
}
