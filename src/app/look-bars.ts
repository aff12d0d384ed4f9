import { ledger, type Rig } from '../diver/index.ts';
import type { DiveState } from '../dive/index.ts';
import type { StageView } from '../stage/index.ts';
import { gasScaleM3, pullsOf, storesOf } from './readings-of.ts';

type StageOverlay = NonNullable<StageView['overlay']>;

/** Each store of gas, here and at the surface. */
export function volumesOverlay(rig: Rig, state: Readonly<DiveState>): Extract<StageOverlay, { kind: 'volumes' }> {
  const stores = storesOf(rig, state).map(({ name, hereM3, surfaceM3 }) => ({ words: name, hereM3, surfaceM3 }));
  return { kind: 'volumes', stores, scaleM3: gasScaleM3(rig) };
}

/** What holds up and what pulls down at the moment, as the arrow on the diver has it. */
export function ledgerOverlay(rig: Rig, state: Readonly<DiveState>): Extract<StageOverlay, { kind: 'ledger' }> {
  const { up, down } = pullsOf(ledger(rig, state));
  const bars = (pulls: typeof up) => pulls.map(({ name, kg, isGas }) => ({ words: name, kgf: kg, isGas }));
  return { kind: 'ledger', up: bars(up), down: bars(down) };
}

/** The bars of now with the numbers of a moment before: those of the sentence, which stands long enough to be read. */
export function withNumbersOf(now: StageOverlay, said: StageOverlay): StageOverlay {
  if (now.kind !== 'ledger' || said.kind !== 'ledger') return now;
  const told = new Map([...said.up, ...said.down].map(({ words, kgf }) => [words, kgf]));
  const bars = (parts: typeof now.up) => parts.map((part) => ({ ...part, saidKgf: told.get(part.words) ?? part.kgf }));
  return { ...now, up: bars(now.up), down: bars(now.down) };
}
