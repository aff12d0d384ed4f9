// `npm run scenes` compares the fixed scenes with their kept pictures; with `-- --renew` it keeps what they look like now.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const wanted = process.argv.slice(2);
const unknown = wanted.filter((each) => each !== '--renew');
if (unknown.length > 0) {
  console.error(`scenes: ${unknown.join(' ')} is unknown; allowed is --renew`);
  process.exit(2);
}
const { status } = spawnSync('npx', ['vitest', 'run', '--project', 'browser', 'tests/browser/scenes'], {
  cwd: fileURLToPath(new URL('..', import.meta.url)),
  stdio: 'inherit',
  shell: process.platform === 'win32',
  env: { ...process.env, ...(wanted.length > 0 && { MIDWATER_SCENES: 'renew' }) },
});
process.exitCode = status ?? 1;
