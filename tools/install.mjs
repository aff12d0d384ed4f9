import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium, findFirefox } from './browsers.mjs';

/** The folder of package.json, whatever folder a person stands in. */
export const home = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs a program to its end, its output going where ours goes.
 * @param {string} program
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {number} the exit code; 1 when it could not be started
 */
export function run(program, args, env = process.env) {
  return spawnSync(program, args, { cwd: home, env, stdio: 'inherit' }).status ?? 1;
}

/**
 * Runs npm, also where it is a script that only a shell can start.
 * @param {string[]} args
 */
export function npm(args) {
  const script = process.env.npm_execpath;
  if (script && /\.[cm]?js$/.test(script)) return run(process.execPath, [script, ...args]);
  if (process.platform !== 'win32') return run('npm', args);
  return spawnSync(`npm ${args.join(' ')}`, { cwd: home, stdio: 'inherit', shell: true }).status ?? 1;
}

/** @param {string} file */
const packagesIn = (file) => JSON.parse(readFileSync(join(home, file), 'utf8')).packages;

/** Whether every package of the lockfile is installed at its version (those for other systems aside). */
function packagesAreThere() {
  if (!existsSync(join(home, 'node_modules/.package-lock.json'))) return false;
  const there = packagesIn('node_modules/.package-lock.json');
  return Object.entries(packagesIn('package-lock.json')).every(
    ([path, wanted]) => path === '' || wanted.optional || there[path]?.version === wanted.version,
  );
}

/**
 * Sees to Node's version and the packages, installing what the lockfile names.
 * @returns {string | undefined} what a person has to do, in one sentence; undefined when all is there
 */
export function needPackages() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    return `Install Node 20.19 or later (this is ${process.versions.node}) and try again.`;
  }
  if (packagesAreThere() || npm(['ci', '--no-audit', '--no-fund']) === 0) return undefined;
  return 'Make the npm registry reachable and run `npm ci`, which failed as shown above, then try again.';
}

/** What the browser tests need, and the Debian package that brings it. */
function missingBrowsers() {
  const fonts = process.platform !== 'linux' || existsSync('/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf');
  const there = { chromium: findChromium(), 'firefox-esr': findFirefox(), 'fonts-dejavu-core': fonts || !isDebian() };
  return Object.entries(there).flatMap(([name, found]) => (found ? [] : [name]));
}

function isDebian() {
  const release = existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '';
  return existsSync('/usr/bin/apt-get') && /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(release);
}

/**
 * Sees to the browsers and the font of the tests, installing them where we may.
 * @returns {string | undefined} what a person has to do, in one sentence; undefined when all is there
 */
export function needBrowsers() {
  let missing = missingBrowsers();
  if (missing.length > 0 && isDebian() && process.getuid?.() === 0) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], env);
    // One by one: a name this system does not know must not keep the others away.
    for (const name of missing) run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], env);
    missing = missingBrowsers();
  }
  if (missing.length === 0) return undefined;
  const command = `apt-get install ${missing.join(' ')}`;
  return isDebian()
    ? `Install ${missing.join(', ')} (as root: ${command}) and run npm test again.`
    : `Install ${missing.join(', ')} (or name their programs in CHROMIUM_PATH and FIREFOX_PATH) and run npm test again.`;
}
