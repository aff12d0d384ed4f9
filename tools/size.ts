import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { limitsKb, measure, rowsOf, type Manifest } from './size-of-build.ts';

// Runs after the build and fails it when a person would wait too long: see size-of-build.ts for what is counted.
const dist = fileURLToPath(new URL('../dist', import.meta.url));
const read = (file: string) => readFileSync(join(dist, file));
const manifest = JSON.parse(read('.vite/manifest.json').toString()) as Manifest;

const sizes = measure(manifest, (file) => gzipSync(read(file), { level: 9 }).length);
for (const row of rowsOf(sizes)) console.log(row);
const over = sizes.shellKb > limitsKb.shell || sizes.flyingKb > limitsKb.flying;
if (over) console.error('The build is over its size limit.');
process.exitCode = over ? 1 : 0;
