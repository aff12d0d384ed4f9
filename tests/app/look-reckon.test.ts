import { describe, expect, test } from 'vitest';
import heavy from '../../src/diver/setups/two-piece-heavy.yaml';
import { READY_SETUPS, emergedM3, instantOf, netForceN, rigOf, type Setup } from '../../src/diver/index.ts';
import { Dive, floatingDepthM, midBreathCl, restingControls, startState, type Start } from '../../src/dive/index.ts';
import { waterAt } from '../../src/water/index.ts';
import { acrossHere, askOf, midLungM3 } from '../../src/app/look-data.ts';
import { lookAt, type InHand } from '../../src/app/look-reckon.ts';
import { answerLook, type LookRequest } from '../../src/app/look-work.ts';
import { readySetup } from '../../src/app/setups.ts';
import * as words from '../../src/panels/look-words.ts';
import { LOOKS, USUAL_LOOKS, toggled, type LookChoice } from '../../src/panels/looks.ts';
import type { StageView } from '../../src/stage/index.ts';

const rig = rigOf(heavy as Setup);
const controls = restingControls(midBreathCl(rig));
const said = { ...words, LOOKS, USUAL_LOOKS, toggled };
const choice = (change: Partial<LookChoice>): LookChoice => ({ ...USUAL_LOOKS, ...change });

function viewOf(start: Start, more: Partial<StageView> = {}): StageView {
  const dive = new Dive(rig, startState(rig, start), controls);
  return { rig, state: dive.state, depthM: start.depthM, nowS: 0, controls, frozen: true, ...more } as StageView;
}
const hover = viewOf({ depthM: 10, jacketM3: 7e-3 });
const look = (change: Partial<LookChoice>, view = hover) => lookAt(view, choice(change), null, said, 'metric');

describe('lookAt()', () => {
  test('forces point up above the neutral depth and down below it, one at each metre', () => {
    const { added } = look({ look: 'forces' });
    const { overlay, neutral } = added;
    if (overlay?.kind !== 'forces') throw new Error('no forces');
    expect(overlay.arrows.map(({ depthM }) => depthM)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    expect(neutral).toHaveLength(1);
    const topM = neutral![0]!.depthM;
    for (const { depthM, netN } of overlay.arrows) expect(Math.sign(netN)).toBe(depthM < topM ? 1 : -1);
  });

  test('the bars of the ledger end as far apart as the net force of the moment, and the sentence says so', () => {
    const { added, sentence } = look({ look: 'ledger' });
    if (added.overlay?.kind !== 'ledger') throw new Error('no ledger');
    const sumN = (parts: readonly { kgf: number }[]) => parts.reduce((sum, { kgf }) => sum + kgf * 9.80665, 0);
    const { up, down } = added.overlay;
    expect(sumN(up) - sumN(down)).toBeCloseTo(netForceN(rig, hover.state), 6);
    expect(added.overlay.afloat).toBe(false);
    expect(up.length).toBeGreaterThan(1);
    expect(down.some(({ words: part }) => part === 'lead')).toBe(true);
    for (const { kgf } of [...up, ...down]) expect(kgf).toBeGreaterThan(0);
    expect(sentence).toContain(`${Math.abs(netForceN(rig, hover.state)).toFixed(1)}\u00a0N`);
  });

  test('what is written in the ledger adds up: parts to what the sentence says, and that to what is more', () => {
    for (let depthM = 2; depthM < 20; depthM += 0.37) {
      const { added, sentence, pulls } = look({ look: 'ledger' }, viewOf({ depthM, jacketM3: 3e-3 }));
      if (added.overlay?.kind !== 'ledger') throw new Error('no ledger');
      const written = (parts: readonly { saidKgf: number }[]) =>
        parts.reduce((sum, { saidKgf }) => sum + Number(saidKgf.toFixed(1)), 0);
      const [up, down, more] = [...sentence.matchAll(/([\d.]+)\u00a0kg/g)].map((found) => Number(found[1]));
      expect(written(added.overlay.up)).toBeCloseTo(up!, 9);
      expect(written(added.overlay.down)).toBeCloseTo(down!, 9);
      if (more !== undefined) expect(Math.abs(up! - down!), sentence).toBeCloseTo(more, 9);
      expect(pulls!.up.map(({ saidKg }) => saidKg)).toEqual(added.overlay.up.map(({ saidKgf }) => saidKgf));
    }
  });

  test('who floats is told of no surplus, though he is pulled down as he bobs: what lifts and what pulls without what is out', () => {
    const depthM = floatingDepthM(rig, 9e-3) - 0.15;
    const bobs = viewOf({ depthM, jacketM3: 9e-3, pitchDeg: 90 });
    expect(netForceN(rig, bobs.state)).toBeLessThan(-5);
    const { added, sentence } = look({ look: 'ledger' }, bobs);
    if (added.overlay?.kind !== 'ledger') throw new Error('no ledger');
    expect(sentence).toMatch(/^Afloat: /);
    expect(added.overlay.afloat).toBe(true);
    expect(sentence).not.toContain('N)');
    const kg = (found: string) => Number(new RegExp(`([\\d.]+)\u00a0kg ${found}`).exec(sentence)![1]);
    // Weight less what of him is under: the same force with the head pressed under is that much greater. @source closed form
    const outN =
      emergedM3(depthM, 1) * waterAt(rig.column, 0, { densityKgPerM3: 0, pressurePa: 0 }).densityKgPerM3 * 9.80665;
    expect(kg('hold') - kg('pull')).toBeCloseTo((netForceN(rig, bobs.state) + outN) / 9.80665, 0);
  });

  test('gas in the jacket has its surface size by the ratio of the pressures', () => {
    const { added, sentence } = look({ look: 'volumes' });
    if (added.overlay?.kind !== 'volumes') throw new Error('no volumes');
    const jacket = added.overlay.stores.find(({ words: name }) => name === 'jacket')!;
    const pressurePa = (depthM: number) => waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa;
    expect(jacket.hereM3).toBeCloseTo(7e-3, 9);
    expect(jacket.surfaceM3 / jacket.hereM3).toBeCloseTo(pressurePa(10) / pressurePa(0), 9);
    expect(sentence).toContain(`${(jacket.surfaceM3 * 1e3).toFixed(1)}\u00a0L`);
  });

  test('the breath reach ends where full and empty lungs balance', () => {
    const { added, sentence } = look({ reach: true });
    const [fromM, toM] = added.breathReachM!;
    const { leastM3, mostM3 } = askOf(USUAL_LOOKS).lungs;
    // Gas in the lungs has its weight too.
    const netN = (depthM: number, lungM3: number) =>
      netForceN(rig, { ...hover.state, depthM, lungM3, lungMol: instantOf(rig, { depthM, lungM3 }).lungMol });
    expect(netN(fromM, leastM3)).toBeCloseTo(0, 3);
    expect(netN(toM, mostM3)).toBeCloseTo(0, 3);
    expect(sentence).toContain(`from ${fromM.toFixed(1)} to ${toM.toFixed(1)}\u00a0m`);
  });

  test('the hill has its top where it says neutral, and the diver stands at no energy', () => {
    const { hill } = look({ look: 'hilltop' });
    const { depthsM, energyJ, topM, depthM } = hill!;
    const highest = depthsM[energyJ.indexOf(Math.max(...energyJ))]!;
    expect(Math.abs(highest - topM!)).toBeLessThanOrEqual(depthsM[1]! - depthsM[0]!);
    const at = depthsM.findIndex((one) => one > depthM);
    expect(Math.min(Math.abs(energyJ[at]!), Math.abs(energyJ[at - 1]!))).toBeLessThan(0.2);
  });

  test('the hill is for a dive that stands still', () =>
    expect(look({ look: 'hilltop' }, { ...hover, frozen: false }).hill).toBeNull());

  test('where a means stops him is where the dive itself comes to rest when he does it', () => {
    const start = { depthM: 5, jacketM3: 0, speedMps: 0.3 } as const;
    const chosen = choice({ look: 'stops', reactionS: 0 });
    const view = viewOf(start);
    const answer = answerLook({ rig, state: view.state, controls, ask: askOf(chosen), nowS: 0, wanted: 'stops' });
    if (answer.kind !== 'stops') throw new Error('no forecast');
    const { added } = lookAt(view, chosen, { answer, said: answer }, said, 'metric');
    if (added.overlay?.kind !== 'ledges') throw new Error('no ledges');
    const ledge = added.overlay.ledges.find(({ words: said }) => said.startsWith('jacket'))!;
    const dive = new Dive(rig, startState(rig, start), { ...controls, jacketAdd: 1 });
    let deepestM = 0;
    for (let i = 0; i < 40 * 120 && dive.state.speedMps > 0; i++) {
      dive.advance(1);
      deepestM = Math.max(deepestM, dive.state.depthM);
    }
    expect(Math.abs(ledge.depthM - deepestM)).toBeLessThan(0.1);
    expect(added.overlay.lost).toContain('breath: too late');
  });

  test('ledges bear the numbers of the sentence, and lie where they are reckoned now', () => {
    const chosen = choice({ look: 'stops' });
    const reckoned = (depthM: number) => {
      const { state } = viewOf({ depthM, jacketM3: 0, speedMps: 0.3 });
      const answer = answerLook({ rig, state, controls, ask: askOf(chosen), nowS: 0, wanted: 'stops' });
      if (answer.kind !== 'stops') throw new Error('no forecast');
      return answer;
    };
    const [earlier, answer] = [reckoned(5), reckoned(5.4)];
    const { added, sentence } = lookAt(hover, chosen, { answer, said: earlier }, said, 'metric');
    if (added.overlay?.kind !== 'ledges') throw new Error('no ledges');
    const spokenM = (means: string) => earlier.forecast.rows.find((row) => row.means === means)!.depthM!.toFixed(1);
    const ofJacket = added.overlay.ledges.find(({ words: plate }) => plate.startsWith('jacket'))!;
    expect(ofJacket.words).toBe(`jacket: ${spokenM('gas')} m`);
    expect(ofJacket.depthM).toBe(answer.forecast.rows.find(({ means }) => means === 'gas')!.depthM);
    expect(ofJacket.depthM.toFixed(1)).not.toBe(spokenM('gas'));
    expect(sentence).toContain(`at ${spokenM('gas')}\u00a0m`);
  });

  test('who turns by himself and is 1.4 kg light there is told that he rises then', async () => {
    const sea = rigOf(await readySetup('temperate-sea'));
    const own = restingControls(midBreathCl(sea));
    const state = startState(sea, { depthM: 12.4, jacketM3: 4.3e-3, speedMps: 0.03 });
    const view = { ...hover, rig: sea, state, controls: own } as StageView;
    const chosen = choice({ look: 'stops' });
    const inHand = inHandOf({ rig: sea, state, controls: own, ask: askOf(chosen), nowS: 0, wanted: 'stops' });
    const { sentence } = lookAt(view, chosen, inHand, said, 'metric');
    expect(sentence).toBe('You turn at 12.4\u00a0m by yourself, and then rise.');
  });

  test('says nothing where nothing is looked at', () => expect(look({})).toMatchObject({ sentence: '', hill: null }));

  test('the dot on the map stands where the diver is now, the map staying the same', () => {
    const at = { depthM: 6, jacketM3: 2e-3 };
    const view = viewOf(at);
    const ask = askOf(USUAL_LOOKS);
    const answer = answerLook({ rig, state: view.state, controls, ask, nowS: 0, wanted: 'gas' });
    if (answer.kind !== 'map') throw new Error('no map');
    const here = { across: NaN, depthM: NaN };
    const map = { answer: { ...answer, map: { ...answer.map, here } }, here };
    const { overlay } = lookAt(view, choice({ look: 'map' }), map, said, 'metric').added;
    if (overlay?.kind !== 'map') throw new Error('no map');
    expect(overlay.maps[0]).toBe(map.answer.map);
    // 2 L at 6 m of 35 psu, 15 °C: about 1.6 bar of it at the surface
    expect(here.across * 1e3).toBeCloseTo(2 * 1.6, 1);
    expect(here).toEqual({ across: acrossHere(rig, view.state, answer.map.across), depthM: 6 });
  });
});

const LOOKED_AT: readonly (readonly [Partial<LookChoice>, LookRequest['wanted'] | null])[] = [
  [{ reach: true }, null],
  [{ look: 'forces' }, null],
  [{ look: 'hilltop' }, null],
  [{ look: 'stops' }, 'stops'],
  [{ look: 'map', across: 'gas' }, 'gas'],
  [{ look: 'map', across: 'lead' }, 'lead'],
  [{ look: 'map', across: 'speed' }, 'speed'],
];

test.each(READY_SETUPS.map(({ id }) => id))('every look has a sentence of plain numbers for %s', async (id) => {
  const own = rigOf(await readySetup(id));
  for (const depthM of [0, 3, own.bottomM]) {
    const state = startState(own, { depthM, jacketM3: 1e-3, speedMps: depthM > 0 ? 0.2 : -0.1 });
    const view = { rig: own, state, depthM, nowS: 0, controls, frozen: true } as StageView;
    for (const [change, wanted] of LOOKED_AT) {
      const isMap = change.look === 'map';
      if (isMap && depthM !== 3) continue;
      const chosen = choice(change);
      const inHand = wanted && inHandOf({ rig: own, state, controls, ask: askOf(chosen), nowS: 0, wanted });
      const { sentence, added } = lookAt(view, chosen, inHand, said, 'metric');
      expect(sentence, `${JSON.stringify(change)} at ${depthM} m`).toMatch(/^[A-Z].*\.$/);
      expect(JSON.stringify([sentence, added])).not.toMatch(/NaN|undefined|Infinity/);
    }
  }
});

function inHandOf(request: LookRequest): InHand {
  const answer = answerLook(request);
  return answer.kind === 'stops' ? { answer, said: answer } : { answer, here: { across: 0, depthM: 0 } };
}

test('midLungM3() is the middle of an automatic breath, and what is in them of any other', () => {
  const state = startState(rig, { depthM: 5 });
  state.lungM3 = 4.4e-3;
  expect(midLungM3(rig, state, { ...controls, breath: 0 })).toBeCloseTo(controls.lungCl * 1e-5, 12);
  expect(midLungM3(rig, state, { ...controls, breath: 1 })).toBe(4.4e-3);
});
