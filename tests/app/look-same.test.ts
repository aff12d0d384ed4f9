import { describe, expect, test } from 'vitest';
import { READY_SETUPS, rigOf } from '../../src/diver/index.ts';
import { restingControls, midBreathCl, startState, type Start } from '../../src/dive/index.ts';
import { USUAL_ASK, withMoreLead, type Means } from '../../src/insight/index.ts';
import { acrossHere, askOf, gasOf } from '../../src/app/look-data.ts';
import { lookAt } from '../../src/app/look-reckon.ts';
import { LESS_LEAD_KG, answerLook, type LookRequest } from '../../src/app/look-work.ts';
import { readySetup } from '../../src/app/setups.ts';
import * as words from '../../src/panels/look-words.ts';
import { LOOKS, USUAL_LOOKS, toggled, type Across } from '../../src/panels/looks.ts';
import type { StageView } from '../../src/stage/index.ts';
import { fly } from '../insight/full-stepping.ts';

const said = { ...words, LOOKS, USUAL_LOOKS, toggled };

async function momentOf(id: string, start: Start) {
  const rig = rigOf(await readySetup(id));
  return { rig, state: startState(rig, start), controls: restingControls(midBreathCl(rig)) };
}
type Moment = Awaited<ReturnType<typeof momentOf>>;
const viewOf = (moment: Moment) => ({ ...moment, depthM: moment.state.depthM, nowS: 0, frozen: true }) as StageView;

function mapOf(moment: Moment, wanted: Across) {
  const request: LookRequest = { ...moment, ask: askOf(USUAL_LOOKS), nowS: 0, wanted };
  const answer = answerLook(request);
  if (answer.kind !== 'map') throw new Error('no map');
  return answer;
}

describe('answerLook()', () => {
  test('lighter: with 4 kg less lead a breath turns who sinks 10 cm above its limit, and does not 10 cm below it', async () => {
    const start = { depthM: 8, jacketM3: 3e-3, speedMps: 0.1 };
    const moment = await momentOf('two-piece-heavy', start);
    const { reaches, lighter } = mapOf(moment, 'speed');
    const deepestM = (of: typeof reaches, means: Means) => of.find((one) => one.means === means)!.deepestM!;
    const rig = withMoreLead(moment.rig, -LESS_LEAD_KG);
    const turns = (fromM: number) => {
      // The gas of the jacket is that of 8 m wherever he is.
      const jacketMol = startState(rig, start).jacketMol;
      const from = { ...startState(rig, { ...start, depthM: fromM }), jacketMol };
      return fly(rig, from, moment.controls, USUAL_ASK, 'breath', 1).stops;
    };
    const limitM = deepestM(lighter!, 'breath');
    expect(turns(limitM - 0.1)).toBe(true);
    expect(turns(limitM + 0.1)).toBe(false);
    expect(limitM).toBeGreaterThan(deepestM(reaches, 'breath') + 5);
  });
});

const ACROSS: readonly Across[] = ['gas', 'lead', 'speed'];

test.each(READY_SETUPS.map(({ id }) => id))('gasOf() and acrossHere() of %s are what its maps say', async (id) => {
  const moment = await momentOf(id, { depthM: 3, jacketM3: 1e-3, speedMps: 0.2 });
  for (const wanted of ACROSS) {
    const { across, here } = mapOf(moment, wanted).map;
    expect(acrossHere(moment.rig, moment.state, across)).toBeCloseTo(here.across, 12);
    if (across.kind === 'gas') expect(gasOf(moment.rig)).toBe(across.of);
  }
});

describe('lookAt()', () => {
  test('on a closed loop the reach is no heaviness: a breath lifts nothing', async () => {
    const moment = await momentOf('closed-loop', { depthM: 10, jacketM3: 1e-3 });
    const { sentence, added } = lookAt(viewOf(moment), { ...USUAL_LOOKS, reach: true }, null, said, 'metric');
    expect(added.breathReachM).toBeNull();
    expect(sentence).toMatch(/^On the closed loop a breath lifts nothing(; you are neutral at [\d.]+\u00a0m)?\.$/);
  });

  test('sentences are in feet where that is wanted; what lies in the water stays metric, as its scale', async () => {
    const moment = await momentOf('two-piece', { depthM: 5, jacketM3: 0, speedMps: 0.3 });
    const request: LookRequest = { ...moment, ask: USUAL_ASK, nowS: 0, wanted: 'stops' };
    const answer = answerLook(request);
    if (answer.kind !== 'stops') throw new Error('no forecast');
    const look = { ...USUAL_LOOKS, look: 'stops' } as const;
    const [metric, imperial] = (['metric', 'imperial'] as const).map((units) =>
      lookAt(viewOf(moment), look, { answer, said: answer }, said, units),
    );
    expect(imperial!.added.overlay).toEqual(metric!.added.overlay);
    if (imperial!.added.overlay?.kind !== 'ledges') throw new Error('no ledges');
    for (const { words: plate } of imperial!.added.overlay.ledges) expect(plate).toMatch(/ \d+\.\d m$/);
    expect(imperial!.sentence).toMatch(/at \d+\u00a0ft/);
    expect(imperial!.sentence).not.toMatch(/\d\s(c?m)\b/);
  });

  test('no sentence of a look has metres in it where feet are wanted', async () => {
    for (const { id } of READY_SETUPS) {
      const moment = await momentOf(id, { depthM: 3, jacketM3: 1e-3, speedMps: 0.2 });
      for (const chosen of [{ reach: true }, { look: 'forces' }, { look: 'hilltop' }] as const) {
        const { sentence } = lookAt(viewOf(moment), { ...USUAL_LOOKS, ...chosen }, null, said, 'imperial');
        expect(sentence, `${id} ${JSON.stringify(chosen)}`).not.toMatch(/\d\s(c?m|kg)\b/);
      }
    }
  });
});
