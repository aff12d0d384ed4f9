import { recorded, replayed, type Proof } from './proof.ts';
import type { ScriptName } from './scripts.ts';

declare global {
  interface Window {
    /** What a test asks of this page. */
    dives: {
      record(script: ScriptName): Promise<Proof>;
      replay(bytes: number[]): Promise<Proof>;
    };
  }
}

window.dives = {
  record: (script) => recorded(script),
  replay: (bytes) => replayed(Uint8Array.from(bytes)),
};
document.title = 'Ready';
