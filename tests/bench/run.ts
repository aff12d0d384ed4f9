// Benchmarks as ratios: `npm run bench`. Each scenario runs in a fresh process of the bundled program, its rounds interleaved
// with the rounds of what it is compared with; the median of the ratios counts. Exits 1 when a demanded one is missed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { firstMap, mapShare, leastOf, warmMaps } from './insight-map.ts';
import { momentsAsked } from './insight-moment.ts';
import { flownLessons } from './lessons.ts';
import { SCENARIOS, driftingMinutes, heldMinutes } from './scenarios.ts';
import { heapGrowth, startUps, timedRatio, type Measured } from './measure.ts';

/** The rate against real time that is demanded, and the milliseconds that ten minutes may take in a fresh process. */
const LEAST_TIMES_REAL = 40_000;
const MOST_DIVE_MS = 150;
/** The same rate of a lesson that a simulated diver flies and that is marked. */
const LEAST_LESSON_TIMES_REAL = 5000;

const [mode, key] = process.argv.slice(2);
if (mode === '--scenario') print(timedRatio(SCENARIOS[key!]!()));
else if (mode === '--rate')
  print(rate('ten minutes held in mid-water, recorded, times real time', heldMinutes, LEAST_TIMES_REAL));
else if (mode === '--drift') print(rate('the same left to drift to the surface or the bottom', driftingMinutes));
else if (mode === '--lessons')
  print(
    rate(
      'a way up with a stop, flown by the steady pilot and marked, times real time',
      flownLessons,
      LEAST_LESSON_TIMES_REAL,
    ),
  );
else if (mode === '--heap') print(heapGrowth());
else if (mode === '--moments') print(momentsAsked());
else if (mode === '--maps') print(warmMaps());
else if (mode === '--first-map') print(firstMap());
else if (mode === '--map-share') print(mapShare());
else if (mode === '--dive') heldMinutes(10);
else if (mode !== '--nothing') await measureAll();

function print(value: unknown): void {
  process.stdout.write(JSON.stringify(value));
}

/**
 * Simulated seconds per second of processor time of ten-minute dives with everything recorded: the median of 21. Processor
 * time, because an absolute rate by the clock would measure who else is busy on the machine.
 */
function rate(name: string, dive: (minutes: number) => number, least?: number): Measured {
  for (let i = 0; i < 5; i++) dive(10);
  const rounds = Array.from({ length: 21 }, () => {
    const from = process.cpuUsage();
    const seconds = dive(10);
    return seconds / (process.cpuUsage(from).user * 1e-6);
  }).sort((a, b) => a - b);
  return { name, value: rounds[10]!, spread: [rounds[5]!, rounds[15]!], ...(least === undefined ? {} : { least }) };
}

async function measureAll(): Promise<void> {
  const home = fileURLToPath(new URL('../..', import.meta.url));
  const folder = join(home, 'node_modules/.cache/bench');
  const bundle = join(folder, 'run.mjs');
  const source = fileURLToPath(import.meta.url);
  const { build } = await import('vite');
  // Bundled as a user's program is, so that no module loader stands between two functions of the step.
  await build({
    configFile: false,
    root: home,
    logLevel: 'silent',
    ssr: { noExternal: true, external: ['vite'] },
    build: {
      ssr: source,
      outDir: folder,
      minify: false,
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'run.mjs' } },
    },
  });

  const child = (...args: string[]) => {
    const done = spawnSync(process.execPath, ['--expose-gc', bundle, ...args], { cwd: home, encoding: 'utf8' });
    if (done.status !== 0) throw new Error(`bench ${args.join(' ')}: ${done.stderr}`);
    return JSON.parse(done.stdout) as Measured | Measured[];
  };
  const rows: Measured[] = [];
  for (const name of Object.keys(SCENARIOS)) rows.push(...[child('--scenario', name)].flat());
  for (const one of ['--rate', '--drift', '--lessons', '--heap', '--moments', '--maps', '--map-share'])
    rows.push(...[child(one)].flat());
  rows.push(leastOf(Array.from({ length: 9 }, () => child('--first-map')).flat()));
  rows.push({
    ...startUps('ten minutes recorded in a fresh process, ms beyond starting it', [bundle]),
    most: MOST_DIVE_MS,
  });
  rows.push(startUps('the same with the sources loaded by tsx, ms', ['--import', 'tsx', source]));

  const missed = rows.filter(({ value, most, least }) => value > (most ?? Infinity) || value < (least ?? -Infinity));
  const result = { node: process.version, rows: rows.map((row) => ({ ...row, met: !missed.includes(row) })) };
  const out = join(folder, 'result.json');
  mkdirSync(dirname(out), { recursive: true });
  writeFileSync(out, `${JSON.stringify(result, null, 2)}\n`);
  if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify(result, null, 2)}\n`);
  else process.stdout.write(table(rows, missed));
  process.exitCode = missed.length > 0 ? 1 : 0;
}

function table(rows: readonly Measured[], missed: readonly Measured[]): string {
  const lines = rows.map((row) => {
    const demand = row.most !== undefined ? `<= ${row.most}` : row.least !== undefined ? `>= ${row.least}` : '';
    const met = demand === '' ? '' : missed.includes(row) ? 'MISSED' : 'met';
    const spread = row.spread ? `${short(row.spread[0])} to ${short(row.spread[1])}` : '';
    return `${short(row.value).padStart(9)}  ${demand.padEnd(9)} ${met.padEnd(7)} ${spread.padEnd(18)} ${row.name}${row.note ? ` (${row.note})` : ''}`;
  });
  return `${lines.join('\n')}\n`;
}

function short(value: number): string {
  return value >= 1000 ? value.toFixed(0) : value.toPrecision(3);
}
