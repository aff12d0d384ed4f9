import type { Controls, DiveState } from '../dive/index.ts';

/** What a pilot is to do now. */
export type Task =
  | { readonly kind: 'float' }
  | { readonly kind: 'travel'; readonly depthM: number }
  /** With an attitude to take, where one is asked for: few have a hand for that. */
  | { readonly kind: 'hold'; readonly depthM: number; readonly pitchDeg?: number }
  | { readonly kind: 'surface' };

/** A simulated diver. */
export interface Pilot {
  /** What he does on this twentieth of a second; call it once for each, in order. */
  decide(state: Readonly<DiveState>, task: Task): Controls;
}

/** A name that changes when the task does. */
export function nameOf(task: Task): string {
  return task.kind === 'travel' || task.kind === 'hold' ? `${task.kind} ${task.depthM}` : task.kind;
}
