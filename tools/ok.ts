// The one gate: `npm run ok`. Every check runs even when an earlier one failed; the last line counts them all.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { againIn, closingLine, testsIn, type Count } from './count.ts';

/** One check: an npm script, and whether it reports tests to be counted one by one. */
interface Gate {
  readonly script: string;
  readonly counted?: boolean;
  /** A gate that has nothing to look at when this one failed. */
  readonly needs?: string;
}

/** Lanes of a round run side by side, a round after the other. What looks at real browsers has the machine to itself. */
const rounds: readonly (readonly (readonly Gate[])[])[] = [
  [
    [{ script: 'unit', counted: true }],
    ['types', 'build', 'lint', 'format', 'rooms', 'unused'].map((script) => ({ script })),
  ],
  [[{ script: 'browser', counted: true, needs: 'build' }]],
];

/** All gates together take no longer; what hangs then is ended, and counts as failed. */
const MOST_MS = 80 * 60_000;

const home = fileURLToPath(new URL('..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'midwater-ok-'));
const failed = new Set<string>();
const counts: Count[] = [];

for (const lanes of rounds) {
  await Promise.all(
    lanes.map(async (gates) => {
      for (const gate of gates) await check(gate);
    }),
  );
}
rmSync(reports, { recursive: true });
console.log(`whole gate      ${(performance.now() / 1000).toFixed(1).padStart(6)} s`);
console.log(closingLine(counts));
process.exitCode = failed.size > 0 ? 1 : 0;

/** Runs a gate, says how it went, and counts it. */
async function check(gate: Gate): Promise<void> {
  const begun = performance.now();
  const { ok, output, tests, again = [] } = await pass(gate);
  const seconds = ((performance.now() - begun) / 1000).toFixed(1);
  const counted = tests ? `  ${closingLine([tests])}` : '';
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${gate.script.padEnd(8)} ${seconds.padStart(6)} s${counted}`);
  for (const name of again) console.log(`again  ${name}`);
  if (!ok) {
    failed.add(gate.script);
    console.log(output.trimEnd());
  }
  if (tests) counts.push(tests);
  counts.push({ passed: ok ? 1 : 0, failed: ok ? 0 : 1 });
}

/** Runs a gate to its end with its output kept, to be shown when it fails. */
async function pass(gate: Gate): Promise<{ ok: boolean; output: string; tests?: Count; again?: readonly string[] }> {
  if (gate.needs && failed.has(gate.needs)) {
    return { ok: false, output: `Not run: it looks at what \`npm run ${gate.needs}\` makes.` };
  }
  const report = join(reports, `${gate.script}.json`);
  const wanted = gate.counted ? ['--', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`] : [];
  const { ok, output } = await run(['run', '--silent', gate.script, ...wanted]);
  if (!gate.counted) return { ok, output };
  const said = existsSync(report) ? readFileSync(report, 'utf8') : null;
  const tests = said === null ? { passed: 0, failed: 0 } : testsIn(said);
  return {
    ok: ok && tests.passed > 0 && tests.failed === 0,
    output,
    tests,
    again: said === null ? [] : againIn(said),
  };
}

/** Runs npm, and ends it with all that it started when the time of the whole gate is over. */
function run(args: readonly string[]): Promise<{ ok: boolean; output: string }> {
  const windows = process.platform === 'win32';
  return new Promise((resolve) => {
    const child = spawn('npm', args, {
      cwd: home,
      shell: windows,
      detached: !windows,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: undefined },
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (words: string) => (output += words));
    }
    const end = () => {
      if (windows || child.pid === undefined) child.kill('SIGKILL');
      else process.kill(-child.pid, 'SIGKILL');
    };
    const late = setTimeout(() => {
      output += `\nEnded: the whole gate may take ${MOST_MS / 60_000} minutes.`;
      end();
    }, MOST_MS - performance.now());
    // A gate that is interrupted leaves nothing running behind it.
    const interrupted = () => (end(), process.exit(1));
    process.once('SIGINT', interrupted).once('SIGTERM', interrupted);
    child.once('error', (problem) => (output += String(problem)));
    child.once('close', (status) => {
      clearTimeout(late);
      process.off('SIGINT', interrupted).off('SIGTERM', interrupted);
      resolve({ ok: status === 0, output });
    });
  });
}
