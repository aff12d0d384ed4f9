import { HEAD_OUT_M, READY_SETUPS } from '../diver/index.ts';
import type { Act, DeckView, Readings } from '../panels/index.ts';
import type { Flight } from './flight.ts';
import { jacketIsEmpty, leadLeft } from './hands.ts';

/** What the deck of a flight offers now. */
export function deckOf(
  flight: Flight,
  page: {
    readonly first: boolean;
    readonly ledger: boolean;
    readonly byHand: boolean;
    readonly wanted: DeckView['wanted'];
    readonly down: ReadonlySet<Act>;
    readonly armed: boolean;
    readonly toggles: boolean;
    readonly keys: DeckView['keys'];
    readonly readings: Readings;
  },
): DeckView {
  const { rig, hands, dive } = flight;
  return {
    ...page,
    drysuit: rig.drysuit !== null,
    loop: rig.loop !== null,
    line: rig.line,
    lineHeld: hands.lineHeld,
    posture: hands.posture,
    headOut: dive.state.depthM < HEAD_OUT_M,
    leadLeft: leadLeft(hands, rig, dive.state.releasedMask),
    jacketEmpty: jacketIsEmpty(rig, dive.state),
    ventsAll: hands.ventsAll,
    breathing: hands.breathing,
  };
}

/** Setups of the chooser. */
export const SETUPS = READY_SETUPS;
