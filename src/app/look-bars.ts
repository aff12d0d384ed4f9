import type { Rig } from '../diver/index.ts';
import type { DiveState } from '../dive/index.ts';
import type { Pull, Pulls } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import { gasScaleM3, storesOf } from './readings-of.ts';

type StageOverlay = NonNullable<StageView['overlay']>;

/** Each store of gas, here and at the surface. */
export function volumesOverlay(rig: Rig, state: Readonly<DiveState>): Extract<StageOverlay, { kind: 'volumes' }> {
  const stores = storesOf(rig, state).map(({ name, hereM3, surfaceM3 }) => ({ words: name, hereM3, surfaceM3 }));
  return { kind: 'volumes', stores, scaleM3: gasScaleM3(rig) };
}

/** What holds up and what pulls down at the moment, as the arrow on the diver has it. */
export function ledgerOverlay({ up, down }: Pulls, afloat: boolean): Extract<StageOverlay, { kind: 'ledger' }> {
  const bars = (pulls: readonly Pull[]) =>
    pulls.map(({ name, kg, isGas, saidKg }) => ({ words: name, kgf: kg, isGas, saidKgf: saidKg }));
  return { kind: 'ledger', up: bars(up), down: bars(down), afloat };
}

/** The bars of now with the numbers of a moment before: those of the sentence, which stands long enough to be read. */
export function withNumbersOf(now: StageOverlay, said: StageOverlay): StageOverlay {
  if (now.kind !== 'ledger' || said.kind !== 'ledger') return now;
  const bars = (parts: typeof now.up, before: typeof now.up) => {
    const told = new Map(before.map((part) => [part.words, part.saidKgf]));
    return parts.map((part) => ({ ...part, saidKgf: told.get(part.words) ?? part.saidKgf }));
  };
  return { ...now, up: bars(now.up, said.up), down: bars(now.down, said.down) };
}
