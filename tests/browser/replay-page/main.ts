import { recorded, replayed, type Proof } from './proof.ts';
import type { ScriptName } from './scripts.ts';

/** What an engine makes of a script, or of the bytes of a run file. */
export interface Engine {
  record(script: ScriptName): Promise<Proof>;
  replay(bytes: number[]): Promise<Proof>;
}

declare global {
  interface Window {
    /** What a test asks of this page. */
    dives: Engine;
  }
}

window.dives = {
  record: (script) => recorded(script),
  replay: (bytes) => replayed(Uint8Array.from(bytes)),
};
document.title = 'Ready';
