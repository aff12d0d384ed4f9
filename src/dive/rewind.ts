import { CONTROL_NAMES, TICKS_PER_CHANGE } from './controls.ts';
import { TICKS_PER_KEPT, type Dive } from './run.ts';
import { copyState, type DiveState } from './state.ts';
import { advance } from './step.ts';

/**
 * A dive looked at as it was at one of its ticks: state and controls are those of then, recording, changes and events those of the
 * whole dive. A dive is its own last moment.
 */
export type Moment = Pick<Dive, 'rig' | 'tick' | 'state' | 'controls' | 'recording' | 'changes' | 'events'>;

/**
 * A moment of a dive, to the bit as it was: dived again from the nearest state that was kept, five seconds of steps at most.
 * @param tick brought to the ticks that there are
 */
export function momentAt(dive: Dive, tick: number): Moment {
  const { rig, recording, changes, events, locked } = dive;
  const at = Math.round(Math.min(Math.max(tick, recording.startTick), dive.tick));
  const state = copyState(dive.kept[Math.floor((at - recording.startTick) / TICKS_PER_KEPT)] as DiveState);
  let i = lastBefore(changes, state.tick + 1);
  while (state.tick < at) {
    const until = Math.min(changes[i + 1]?.tick ?? at, at);
    advance(rig, state, changes[i]!.controls, until - state.tick, undefined, locked);
    if (state.tick < at) i++;
  }
  return { rig, tick: at, state, controls: changes[lastBefore(changes, at)]!.controls, recording, changes, events };
}

/** The dive up to a tick, to be flown on from there; brought to the last twentieth of a second until then, where all that flies may take it up. */
export function diveAt(dive: Dive, tick: number): Dive {
  const { startTick } = dive.recording;
  const since = Math.max(0, Math.min(tick, dive.tick) - startTick);
  return dive.upTo(momentAt(dive, startTick + since - (since % TICKS_PER_CHANGE)).state);
}

/**
 * The last tick until which two dives are one, or null where they begin apart or are of different divers: what was done is compared,
 * everything else follows from it.
 */
export function commonTick(one: Dive, other: Dive): number | null {
  if (JSON.stringify([one.rig, one.kept[0], one.locked]) !== JSON.stringify([other.rig, other.kept[0], other.locked]))
    return null;
  const ends = Math.min(one.tick, other.tick);
  for (let i = 0; ; i++) {
    const [a, b] = [one.changes[i], other.changes[i]];
    if (a && b && a.tick === b.tick && CONTROL_NAMES.every((name) => a.controls[name] === b.controls[name])) continue;
    return Math.min(a?.tick ?? ends, b?.tick ?? ends, ends);
  }
}

/** Place of the change whose controls hold just before a tick; the first from the start on. */
function lastBefore(changes: Dive['changes'], tick: number): number {
  let low = 0;
  let high = changes.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (changes[middle]!.tick < tick) low = middle;
    else high = middle - 1;
  }
  return low;
}
