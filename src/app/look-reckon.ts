import { ledger, netForceN } from '../diver/index.ts';
import {
  breathReachAt,
  hilltop,
  neutralDepths,
  steepnessAt,
  wayOf,
  type Means,
  type NeutralDepth,
} from '../insight/index.ts';
import { saidSumKg, type HillView, type LookChoice, type PartRow, type Pulls } from '../panels/index.ts';
import type { Settings, fetchLooks } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import { ledgerOverlay, volumesOverlay } from './look-bars.ts';
import {
  acrossHere,
  askOf,
  forcesOverlay,
  gasOf,
  mapOverlay,
  midBreath,
  neutralMarks,
  stopsOverlay,
} from './look-data.ts';
import { OUT_OF_WATER, placeOf, pullsOf, storesOf } from './readings-of.ts';
import { LESS_LEAD_KG, type MapAnswer, type StopsAnswer } from './look-work.ts';

/** Words of the looks, as the panels have them. */
export type LookWords = Awaited<ReturnType<typeof fetchLooks>>;

/** A moment looked at: what is added to the picture, one sentence, and of a dive that stands still the hill, or every part. */
export interface Looked {
  readonly added: Pick<StageView, 'breathReachM' | 'neutral' | 'overlay'>;
  readonly sentence: string;
  readonly hill: HillView | null;
  readonly pulls: Pulls | null;
  readonly parts: readonly PartRow[] | null;
}

/**
 * What was reckoned beside the page last: of a stopping forecast also the one that the sentence is about; on a map the diver's
 * place moves on while the map stays.
 */
export type InHand =
  | { readonly answer: StopsAnswer; readonly said: StopsAnswer }
  | { readonly answer: MapAnswer; readonly here: { across: number; depthM: number } };

/** How far the hill is drawn beyond the diver and its top, at least, metres. */
const HILL_BEYOND_M = 3;
/** A part with less than this, newtons, is not listed. */
const LEAST_N = 0.005;
const RECKONING = 'Reckoning …';

/** What the model says about a moment. @param inHand what was reckoned beside the page last, if it belongs here */
export function lookAt(
  view: StageView,
  choice: LookChoice,
  inHand: InHand | null,
  words: LookWords,
  units: Settings['units'],
): Looked {
  const { rig, state, controls } = view;
  const { reach, look } = choice;
  const at = midBreath(rig, state, controls);
  const ask = askOf(choice);
  const neutral = neutralDepths(rig, at);
  const netN = netForceN(rig, at);
  const breathReachM = reach ? breathReachAt(rig, at, ask.lungs) : null;
  const gas = gasOf(rig);
  const marked = reach || look === 'forces' || look === 'hilltop';
  const looked = (overlay: StageView['overlay'], sentence: string, hill: HillView | null = null): Looked => ({
    added: { overlay: overlay ?? null, neutral: marked ? neutralMarks(neutral) : [], breathReachM },
    sentence: words.unbroken(sentence),
    hill,
    pulls: null,
    parts: null,
  });
  if (look === 'forces') return looked(forcesOverlay(rig, at), words.neutralWords(neutral, at.depthM, netN, units));
  if (look === 'hilltop') {
    const steepness = steepnessAt(rig, at, controls.breath === 2);
    const hill = view.frozen ? hillOf(view, at, neutral) : null;
    return looked(forcesOverlay(rig, at), words.steepnessWords(steepness, units), hill);
  }
  if (look === 'volumes') return looked(volumesOverlay(rig, state), words.volumesWords(storesOf(rig, state)));
  if (look === 'ledger') {
    const afloat = placeOf(rig, state, netN) === 'afloat';
    const pulls = pullsOf(ledger(rig, state));
    const parts = view.frozen ? partsOf(view) : null;
    const [upKg, downKg] = [saidSumKg(pulls.up), saidSumKg(pulls.down)];
    const outKg = saidSumKg(pulls.down.filter(({ name }) => name === OUT_OF_WATER));
    const sentence = afloat
      ? words.afloatWords(upKg, downKg - outKg, units)
      : words.ledgerWords(upKg, downKg, netForceN(rig, state), units);
    return { ...looked(ledgerOverlay(pulls, afloat), sentence), pulls, parts };
  }
  if (look === 'stops') {
    if (!inHand || !('said' in inHand)) return looked(null, RECKONING);
    const { answer, said } = inHand;
    const wordsOf = (means: Means, way: 1 | -1) => words.meansWords(means, gas, way);
    const overlay = stopsOverlay(answer.forecast, answer.nowS, wordsOf, said.forecast, rig.lungs.open);
    return looked(overlay, words.stoppingWords({ ...said, of: gas }, units));
  }
  if (look === 'map') {
    if (!inHand || !('here' in inHand)) return looked(null, RECKONING);
    const { answer, here } = inHand;
    here.across = acrossHere(rig, state, answer.map.across);
    here.depthM = state.depthM;
    const { reaches: now, lighter } = answer;
    const way = wayOf(rig, state, controls);
    const asked = { now, lighter, lessKg: LESS_LEAD_KG, depthM: at.depthM, way, of: gas };
    return looked(mapOverlay(answer.map, words.mapWords(gas)), words.recoveryWords(asked, units));
  }
  return looked(null, reach ? words.reachWords(breathReachM, neutral, at.depthM, netN, units, rig.lungs.open) : '');
}

/** Every part at the moment, those that do nothing left out. */
function partsOf({ rig, state }: StageView): PartRow[] {
  return ledger(rig, state)
    .map(({ part, buoyancyN, weightN }) => ({ part, upN: buoyancyN, downN: weightN }))
    .filter(({ upN, downN }) => Math.abs(upN) > LEAST_N || Math.abs(downN) > LEAST_N);
}

/** The hill about the diver, wide enough to show its top where there is one. */
function hillOf({ rig }: StageView, at: ReturnType<typeof midBreath>, neutral: readonly NeutralDepth[]): HillView {
  const tops = neutral.filter(({ stable }) => !stable).map(({ depthM }) => depthM);
  const topM = tops.sort((a, b) => Math.abs(a - at.depthM) - Math.abs(b - at.depthM))[0] ?? at.depthM;
  const beyondM = Math.max(HILL_BEYOND_M, Math.abs(topM - at.depthM));
  const fromM = Math.max(Math.min(at.depthM, topM) - beyondM, 0);
  const toM = Math.min(Math.max(at.depthM, topM) + beyondM, rig.bottomM);
  return { ...hilltop(rig, at, at.lungM3, Math.min(fromM, toM - 1), toM), depthM: at.depthM };
}
