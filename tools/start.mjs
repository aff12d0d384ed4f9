// `npm start` on a fresh clone: installs what is missing, builds, and serves the build on this machine only.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { home, needPackages, npm } from './install.mjs';
import { serve } from './serve.mjs';

const usualPort = 4173;

/** Shows the address where there is a desktop to show it on; where it fails, the printed address remains. */
function open(/** @type {string} */ url) {
  if (process.env.CI || !process.stdout.isTTY) return;
  const desktop = process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY;
  const ways = /** @type {Record<string, string[] | undefined>} */ ({
    darwin: ['open', url],
    win32: ['explorer', url],
    linux: desktop ? ['xdg-open', url] : undefined,
  });
  const [program, ...args] = ways[process.platform] ?? [];
  if (program)
    spawn(program, args, { stdio: 'ignore', detached: true })
      .on('error', () => undefined)
      .unref();
}

const need = needPackages();
if (need) {
  console.error(need);
  process.exit(1);
}
if (npm(['run', '--silent', 'build']) !== 0) process.exit(1);

const { url, close } = await serve(join(home, 'dist'), Number(process.env.PORT ?? usualPort));
console.log(`Midwater is at ${url} (stop with Ctrl+C)`);
open(url);
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => close().then(() => process.exit(0)));
