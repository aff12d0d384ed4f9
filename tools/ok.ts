// The one gate: `npm run ok`. Every check runs even when an earlier one failed; the last line counts them all.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closingLine, testsIn, type Count } from './count.ts';

/** One check: an npm script, and whether it reports tests to be counted one by one. */
interface Gate {
  readonly script: string;
  readonly counted?: boolean;
  /** A gate that has nothing to look at when this one failed. */
  readonly needs?: string;
}

const gates: readonly Gate[] = [
  { script: 'types' },
  { script: 'lint' },
  { script: 'format' },
  { script: 'rooms' },
  { script: 'unused' },
  { script: 'unit', counted: true },
  { script: 'lessons' },
  { script: 'build' },
  { script: 'browser', counted: true, needs: 'build' },
];

const home = fileURLToPath(new URL('..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'midwater-ok-'));
const failed = new Set<string>();
const counts: Count[] = [];

for (const gate of gates) {
  const begun = performance.now();
  const { ok, output, tests } = pass(gate);
  const seconds = ((performance.now() - begun) / 1000).toFixed(1);
  const counted = tests ? `  ${closingLine([tests])}` : '';
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${gate.script.padEnd(8)} ${seconds.padStart(6)} s${counted}`);
  if (!ok) {
    failed.add(gate.script);
    console.log(output.trimEnd());
  }
  if (tests) counts.push(tests);
  counts.push({ passed: ok ? 1 : 0, failed: ok ? 0 : 1 });
}
rmSync(reports, { recursive: true });
console.log(closingLine(counts));
process.exitCode = failed.size > 0 ? 1 : 0;

/** Runs a gate to its end with its output kept, to be shown when it fails. */
function pass(gate: Gate): { ok: boolean; output: string; tests?: Count } {
  if (gate.needs && failed.has(gate.needs)) {
    return { ok: false, output: `Not run: it looks at what \`npm run ${gate.needs}\` makes.` };
  }
  const report = join(reports, `${gate.script}.json`);
  const wanted = gate.counted ? ['--', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`] : [];
  const done = spawnSync('npm', ['run', '--silent', gate.script, ...wanted], {
    cwd: home,
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
    shell: process.platform === 'win32',
    env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: undefined },
  });
  const output = `${done.stdout}${done.stderr}${done.error ?? ''}`;
  if (!gate.counted) return { ok: done.status === 0, output };
  const tests = existsSync(report) ? testsIn(readFileSync(report, 'utf8')) : { passed: 0, failed: 0 };
  return { ok: done.status === 0 && tests.passed > 0 && tests.failed === 0, output, tests };
}
