import type { BenchDial, DeepView, Placed, TankView } from '../bench/index.ts';
import { DRY_N, NEUTRAL, ON_M, REST_MPS, bobs, forceText, newtonsOf } from './bench-newtons.ts';

/** A hollow with so much of its weight in water has swamped. */
const SWAMPED = 0.25;

/** A length of the bench: "31 mm". */
export function mmText(metres: number): string {
  return `${Math.round(metres * 1000)} mm`;
}

/** A volume: "200 mL". */
export function mlText(m3: number): string {
  const ml = m3 * 1e6;
  return `${ml.toFixed(ml < 10 ? 1 : 0)} mL`;
}

/** What a thing is called in the picture, where others lie beside it: what tells it from them. */
export function shortName({ thing: { spec, massKg } }: Placed): string {
  if (spec.kind === 'block' || spec.kind === 'odd-stone') return spec.material;
  return spec.kind === 'stone' ? massText(massKg) : spec.kind;
}

/** A mass: "499 g", "1.3 kg". */
function massText(kg: number): string {
  return kg < 1 ? `${Math.round(kg * 1000)} g` : `${Number(kg.toFixed(2))} kg`;
}

/** What a class should see of the thing that is chosen, in one sentence. @param may whether hands may do something now */
export function tankSentence(view: TankView, may = true): string {
  const one = view.things.find(({ id }) => id === view.chosenId);
  if (!one) return 'The tank is empty.';
  const the = `The ${one.name}`;
  const { weight, water } = newtonsOf(one);
  if (view.hookYM !== null) return `${the} ${hangs(one)}.`;
  if (view.hand) {
    return one.buoyantN < DRY_N
      ? `${the} is in your hand: ${weight} in air.${may ? ' Let it go.' : ''}`
      : `${the} is held: it weighs ${weight}, the water it pushes aside ${water}.`;
  }
  if (one.speedMps > REST_MPS && !bobs(one)) return `${the} ${moves(one)}.`;
  return restSentence(the, one, view);
}

/** Three forces on what hangs: at rest both that pull up come to the weight. */
function hangs(one: Placed): string {
  const { weightN, buoyantN, balanceN, speedMps } = one;
  const { weight, water, balance } = newtonsOf(one);
  if (buoyantN < DRY_N) return `hangs on the balance: ${balance} in air`;
  const even = speedMps < REST_MPS && Math.abs(weightN - buoyantN - balanceN) < NEUTRAL * weightN;
  return even
    ? `hangs on the balance, which carries ${balance} of its ${weight}; the water carries ${water}`
    : `swings on the balance, which pulls ${balance}; the water lifts ${water}, and it weighs ${weight}`;
}

/** What a thing does that moves: water that carries less than it weighs lets it sink. */
function moves(one: Placed): string {
  const { weightN, buoyantN, downMps } = one;
  const { weight, water } = newtonsOf(one);
  const weighs = `it weighs ${weight}`;
  if (buoyantN < DRY_N) return `falls: ${weighs}`;
  const heavy = weightN > buoyantN;
  if (heavy && downMps > 0) return `sinks: ${weighs}, the water it pushes aside only ${water}`;
  return `${!heavy && downMps < 0 ? 'rises' : 'moves'}: ${weighs}, the water it pushes aside ${water}`;
}

function restSentence(the: string, one: Placed, { heightM }: TankView): string {
  const { weightN, soakedN, buoyantN, draughtM, freeboardM, thing } = one;
  const lowestM = Math.max(...one.solid.map(({ yM }) => yM));
  const atBottom = lowestM > heightM - ON_M;
  if (soakedN > SWAMPED * weightN) return `${the} is full of water and has sunk.`;
  if (freeboardM > ON_M && !atBottom)
    return thing.hollow.length > 0
      ? `${the} floats, ${mmText(draughtM)} deep, ${mmText(freeboardM)} of rim above water.`
      : `${the} floats, ${mmText(draughtM)} deep, ${mmText(freeboardM)} above water.`;
  const leftN = buoyantN - weightN;
  if (Math.abs(leftN) < NEUTRAL * weightN)
    return `${the} stays where it is: it weighs what the water weighs that it pushes aside.`;
  const where = atBottom ? 'lies on the bottom' : leftN < 0 ? 'lies on another' : 'is kept under by another';
  const { weight, water, left } = newtonsOf(one);
  const how = `${left} ${leftN < 0 ? 'heavy' : 'light'}`;
  const only = leftN < 0 ? ' only' : '';
  return `${the} ${where}, ${how}: it weighs ${weight}, the water it pushes aside${only} ${water}.`;
}

/** What is left of the forces on a thing, in words, and the kind of it: "even", "bobs", "0.3 N light". */
export function leftOver(one: Placed, netN: number, even: boolean): { readonly kind: string; readonly words: string } {
  const { weight, water, left } = newtonsOf(one);
  // What floats is even once the two forces read alike; before, it still moves about that.
  if (one.balanceN === 0 && bobs(one)) return { kind: 'even', words: water === weight ? 'even' : 'bobs' };
  if (even) return { kind: 'even', words: 'even' };
  return { kind: netN > 0 ? 'lift' : 'heavy', words: `${left} ${netN > 0 ? 'light' : 'heavy'}` };
}

/** What a class should see of bag, ball or bottle, in one sentence. */
export function deepSentence({ kind, bodies, heldM, noReturnM, bottomM }: DeepView): string {
  const said = (name: string, netN: number) =>
    isEven(netN, kind) ? `the ${name} is neutral` : `the ${name} is ${forceText(netN)} ${netN > 0 ? 'light' : 'heavy'}`;
  const all = bodies.map(({ name, netN }) => said(name, netN)).join(', ');
  const held = heldM === null ? 'Let go' : `Held at ${depthWords(heldM, bottomM)}`;
  const back =
    kind === 'bottle' && noReturnM !== null
      ? noReturnM <= 0
        ? ' It sinks from anywhere.'
        : noReturnM >= bottomM
          ? ' It comes back from everywhere in the flask.'
          : ` Below ${depthWords(noReturnM, bottomM)} it does not come back.`
      : '';
  return `${held}: ${all}.${back}`;
}

/** Whether nothing is left over that could be told: of a kilogram in the deep tank, of twelve grams in the flask, newtons. */
export function isEven(netN: number, kind: DeepView['kind']): boolean {
  return Math.abs(netN) < (kind === 'deep' ? 5e-3 : 5e-5);
}

/** A depth in a tank: metres in a deep one, centimetres in a flask. */
export function depthWords(depthM: number, bottomM: number): string {
  return bottomM > 2 ? `${depthM.toFixed(1)} m` : `${(depthM * 100).toFixed(0)} cm`;
}

/** What a dial is called, and how its value reads. */
export function dialWords({ id, value }: BenchDial): { readonly name: string; readonly words: string } {
  const mm = `${(value * 1000).toFixed(value < 0.01 ? 1 : 0)} mm`;
  switch (id) {
    case 'flatness':
      return { name: 'flat', words: `${value.toFixed(1)} to 1` };
    case 'hollow':
      return { name: 'hollow', words: value <= 0 ? 'none' : `${Math.round(value * 100)} %` };
    case 'square':
      return { name: 'sides', words: value > 0.6 ? 'upright' : value > 0.2 ? 'sloping' : 'round' };
    case 'mass':
      return { name: 'mass', words: massText(value) };
    case 'wall':
    case 'width':
    case 'height':
      return { name: id, words: mm };
  }
}
