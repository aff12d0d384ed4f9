/** One chunk as Vite's manifest describes it. */
interface Chunk {
  readonly file: string;
  readonly isEntry?: boolean;
  /** Manifest keys of what is loaded along with this chunk. */
  readonly imports?: readonly string[];
  readonly css?: readonly string[];
}

/** Vite's manifest: chunks by the path of their source, or by a name of its own for shared ones. */
export type Manifest = Readonly<Record<string, Chunk>>;

/** Gzipped sizes in kB of 1000 bytes, and each counted file with its part. */
export interface Sizes {
  readonly shellKb: number;
  readonly flyingKb: number;
  readonly files: readonly { readonly file: string; readonly kb: number; readonly part: 'shell' | 'flying' }[];
}

/** Most that may be loaded: page, scripts and styles before the first paint; scripts until the diver can be flown. */
export const limitsKb = { shell: 40, flying: 190 } as const;

/** The chunk that brings everything flying needs; the app imports it dynamically, after the first paint. */
const flySource = 'src/app/fly.ts';

/** The first diver's kit, fetched together with the stage. */
const firstSetup = 'src/diver/setups/first-dive.yaml';

/** Of these one is loaded by every first flight, whichever suits the machine: the larger counts. */
const renderers = ['src/stage/webgl.ts', 'src/stage/canvas.ts'];

/** Keys of a chunk and of all that it imports statically, each once. */
function closure(manifest: Manifest, key: string, seen = new Set<string>()): Set<string> {
  if (seen.has(key)) return seen;
  const chunk = manifest[key];
  if (!chunk) throw new RangeError(`size: the manifest has no chunk for ${key}`);
  seen.add(key);
  for (const next of chunk.imports ?? []) closure(manifest, next, seen);
  return seen;
}

/**
 * What a first visit loads: the shell is the page, the entry's static imports and their styles (fonts not counted);
 * flying is every script of the shell, of the chunk `src/app/fly.ts`, of the first
 * diver's kit, and of the larger renderer.
 * @param gzipBytes size of a built file as sent
 * @throws {RangeError} when the build has no entry, several, or no chunk of its own for flying
 */
export function measure(manifest: Manifest, gzipBytes: (file: string) => number): Sizes {
  const entries = Object.keys(manifest).filter((key) => manifest[key]?.isEntry);
  if (entries.length !== 1) throw new RangeError(`size: one entry expected, found ${entries.join(', ') || 'none'}`);
  const shell = closure(manifest, entries[0]!);
  const scripts = (keys: Iterable<string>) => [...keys].map((key) => manifest[key]!.file);
  const bare = closure(manifest, flySource, new Set(shell));
  if (manifest[firstSetup]) closure(manifest, firstSetup, bare);
  const flights = renderers.filter((key) => manifest[key]).map((key) => closure(manifest, key, new Set(bare)));
  const bytesOf = (keys: Set<string>) => scripts(keys).reduce((bytes, file) => bytes + gzipBytes(file), 0);
  const all = flights.reduce((most, flight) => (bytesOf(flight) > bytesOf(most) ? flight : most), bare);

  const styles = [...new Set([...shell].flatMap((key) => manifest[key]!.css ?? []))];
  const sized = (part: 'shell' | 'flying') => (file: string) => ({ file, kb: gzipBytes(file) / 1000, part });
  const page = ['index.html', ...styles].map(sized('shell'));
  const first = scripts(shell).map(sized('shell'));
  const later = scripts([...all].filter((key) => !shell.has(key))).map(sized('flying'));
  const sum = (files: readonly { kb: number }[]) => files.reduce((kb, file) => kb + file.kb, 0);
  return {
    shellKb: sum([...page, ...first]),
    flyingKb: sum([...first, ...later]),
    files: [...page, ...first, ...later],
  };
}

/** The table that the build prints: a line a file, then the two sums against their limits. */
export function rowsOf(sizes: Sizes): string[] {
  const row = (kb: number, part: string, text: string) => `${kb.toFixed(1).padStart(8)} kB  ${part.padEnd(8)}${text}`;
  return [
    'gzipped, before the first paint (shell) and until flying:',
    ...sizes.files.map((file) => row(file.kb, file.part, file.file)),
    row(sizes.shellKb, 'shell', `before the first paint, of ${limitsKb.shell} kB`),
    row(sizes.flyingKb, 'flying', `script until flying, of ${limitsKb.flying} kB`),
  ];
}
