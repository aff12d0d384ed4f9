import type { Problem, Setup } from '../diver/index.ts';
import type { RunSecond } from '../dive/file.ts';
import type { Run } from '../dive/index.ts';

/** What a file of a person's turned out to be. */
export type Opened =
  | { readonly kind: 'setup'; readonly setup: Setup }
  | { readonly kind: 'run'; readonly run: Run; readonly endHash: string; readonly second: RunSecond | null }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/** First bytes of a deflated file. */
const DEFLATED = [0x1f, 0x8b];

/** What is said of a picture, or of anything else that is no text. */
const NO_TEXT: Problem = {
  line: 1,
  path: '',
  found: 'bytes that are no text',
  allowed: 'a setup, or a dive saved here',
  suggestion: 'Choose another file.',
};

/** Reads a file that a person chose: a dive as we save it, or a setup. The readers are fetched now and not before. */
export async function openFile(file: Blob): Promise<Opened> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const text = () => new TextDecoder().decode(bytes);
  const deflated = DEFLATED.every((byte, i) => bytes[i] === byte);
  if (deflated || text().trimStart().startsWith('{')) {
    const { readRun } = await import('../dive/file.ts');
    const read = readRun(bytes);
    if ('problems' in read) return { kind: 'problems', problems: read.problems };
    const { run, endHash, second } = read.file;
    return { kind: 'run', run, endHash, second: second ?? null };
  }
  if (bytes.includes(0)) return { kind: 'problems', problems: [NO_TEXT] };
  const { readSetup } = await import('../diver/file.ts');
  const read = readSetup(text());
  if ('problems' in read) return { kind: 'problems', problems: read.problems };
  return { kind: 'setup', setup: read.setup };
}

/** Hands bytes to the person as a file. */
export function saveFile(doc: Document, bytes: Uint8Array, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/octet-stream' }));
  const link = doc.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}
