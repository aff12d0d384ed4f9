import type { Controls, DiveState } from '../dive/index.ts';

/** What a pilot is to do now. */
export type Task =
  | { readonly kind: 'float' }
  | { readonly kind: 'travel' | 'hold'; readonly depthM: number }
  | { readonly kind: 'surface' };

/** A simulated diver. */
export interface Pilot {
  /** What he does on this twentieth of a second; call it once for each, in order. */
  decide(state: Readonly<DiveState>, task: Task): Controls;
}
