import { READY_SETUPS } from '../diver/index.ts';
import { rowOf } from '../dive/index.ts';
import type { Act, DeckView, Readings } from '../panels/index.ts';
import type { Flight } from './flight.ts';
import { leadLeft } from './hands.ts';

/** Above what venting leaves, m³, a jacket still has something to let out: a twentieth of a litre. */
const NOTHING_M3 = 5e-5;

/** What the deck of a flight offers now. */
export function deckOf(
  flight: Flight,
  page: {
    readonly first: boolean;
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
    leadLeft: leadLeft(hands, rig),
    jacketEmpty: rowOf(rig, dive.state).jacketM3 <= rig.jacket.residualM3 + NOTHING_M3,
  };
}

/** Setups of the chooser. */
export const SETUPS = READY_SETUPS;
