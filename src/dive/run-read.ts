import { checkYaml, type Path, type Problem } from '../diver/file.ts';
import { firstControls } from './controls.ts';
import { textOfRunBytes, LARGEST_RUN_BYTES } from './run-bytes.ts';
import { changesOf, type ChangeColumns } from './run-columns.ts';
import { readJson } from './run-json.ts';
import { rigBreaks, startBreaks } from './run-rules.ts';
import { runSchema } from './run-schema.ts';
import { secondBreaks } from './run-second.ts';
import { CONTROLS_IN_VERSION, TICKS_IN_VERSION, type RunExtra } from './run-text.ts';
import type { Run } from './run.ts';
import { stateOf } from './state.ts';

/** A run file that was read: the run, and what the file says beside it. */
export interface RunFile extends RunExtra {
  readonly run: Run;
  /** What the dive's last state had; a replay that ends with another did not repeat it. */
  readonly endHash: string;
}

/** How many problems are told at a time: more are of no use to a person. */
const MOST_PROBLEMS = 50;
/** Outside the columns of changes no list or group of a run file comes near this many entries. */
const MOST_ENTRIES = 200;
const SUGGESTION = 'Save the run again, or open an untouched copy';

/**
 * Reads a run file from its bytes, deflated or not, or from its text. Everything is checked before anything is dived: shape,
 * ranges, sums, ticks, values of controls. All problems come together, each with its line in the inflated text (1 where it cannot
 * be inflated); there is at least one when there is no run. Never throws, whatever it is given. The hash is checked for its form
 * only: to meet it, the run must be dived.
 */
export function readRun(
  given: Uint8Array | string,
): { readonly file: RunFile } | { readonly problems: readonly Problem[] } {
  if (typeof given !== 'string') {
    const inflated = textOfRunBytes(given);
    if ('text' in inflated) return readRun(inflated.text);
    const allowed = `a run file, at most ${LARGEST_RUN_BYTES / 1024 / 1024} MB inflated`;
    return { problems: [{ line: 1, path: '', found: inflated.wrong, allowed, suggestion: SUGGESTION }] };
  }
  if (given.length > LARGEST_RUN_BYTES) return readRun(new Uint8Array(LARGEST_RUN_BYTES + 1));
  const json = readJson(given);
  if (!('value' in json)) return json;
  const swollen = swollenAt(json.value, []);
  if (swollen) {
    const allowed = `at most ${MOST_ENTRIES} entries outside the changes`;
    return { problems: [{ ...json.at(swollen), found: 'very many entries', allowed, suggestion: SUGGESTION }] };
  }
  const { problems, output } = checkYaml(runSchema, json);
  if (problems.length > 0 || !output) return { problems: problems.slice(0, MOST_PROBLEMS) };

  const said = (at: Path, found: string, allowed: string): Problem => ({
    ...json.at(at),
    found,
    allowed,
    suggestion: SUGGESTION,
  });
  const breaks = [...rigBreaks(output), ...startBreaks(output), ...secondBreaks(output.second)].map(
    ({ at, found, allowed }) => said(at, found, allowed),
  );
  if (breaks.length > 0) return { problems: breaks.sort((a, b) => a.line - b.line).slice(0, MOST_PROBLEMS) };
  const { format: _format, version, ticks, locked, start, rig, controls, changes, ...extra } = output;
  const first = firstControls(controls);
  const state = stateOf(start);
  const columns = changes as unknown as ChangeColumns;
  const [known, every] = [CONTROLS_IN_VERSION[version], TICKS_IN_VERSION[version]];
  const unpacked = changesOf(columns, first, state.tick, ticks, known, every);
  if ('fault' in unpacked) {
    const { column, entry, found, allowed } = unpacked.fault;
    return { problems: [said(['changes', column, entry], found, allowed)] };
  }
  return { file: { ...extra, run: { rig, start: state, changes: unpacked.changes, ticks, locked } } };
}

/** Where a list or group has more entries than a run can have: it is refused before each of them is looked at. */
function swollenAt(value: unknown, path: Path): Path | undefined {
  if (typeof value !== 'object' || value === null || (path[0] === 'changes' && Array.isArray(value))) return undefined;
  const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  if (entries.length > MOST_ENTRIES) return path;
  for (const [key, inner] of entries) {
    const found = swollenAt(inner, [...path, key]);
    if (found) return found;
  }
  return undefined;
}
