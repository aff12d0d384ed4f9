import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The built program, which is what people run and so what is tested. */
export const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** Runs in the page before anything of ours: makes a breach of the content policy an error that the watch hears. */
export function reportPolicyBreaches(): void {
  addEventListener('securitypolicyviolation', (breach) => {
    console.error(`content policy: ${breach.effectiveDirective} refused ${breach.blockedURI} (${breach.sample})`);
  });
}

/** Listens to one visit; whatever went wrong unasked fails it at the end. */
export class Watch {
  readonly #origin: string;
  readonly #faults: string[] = [];
  readonly #paths: string[] = [];
  #foreseen: RegExp | null = null;

  constructor(url: string) {
    this.#origin = new URL(url).origin;
  }

  /** What the visit asked our server for, in order: paths without the query. */
  get paths(): readonly string[] {
    return this.#paths;
  }

  /** From here on faults with these words are what the test brings about itself. */
  foresee(words: RegExp): void {
    this.#foreseen = words;
  }

  /** A fault that the page reported: an error on its console, an exception that nobody caught. */
  fault(what: string): void {
    if (!this.#foreseen?.test(what)) this.#faults.push(what);
  }

  /** A request that left the page; one to anywhere but our own server is a fault. */
  request(target: string): void {
    const { origin, protocol, pathname } = new URL(target);
    if (origin === this.#origin) this.#paths.push(pathname);
    else if (!['data:', 'blob:', 'about:'].includes(protocol)) this.#faults.push(`a request left for ${target}`);
  }

  /** @throws {Error} that names every fault */
  end(): void {
    if (this.#faults.length > 0) throw new Error(`the visit had faults:\n${[...new Set(this.#faults)].join('\n')}`);
  }
}

/** @throws {Error} when there is nothing to serve yet */
export function needsBuild(folder: string): void {
  if (!existsSync(folder)) throw new Error(`the browser tests look at ${folder}: run npm run build first`);
}
