import { READY_SETUPS, rigOf, type Rig, type Setup } from '../diver/index.ts';
import { leadChanges, withMoreLead } from '../insight/index.ts';
import type { PairGroup } from '../panels/index.ts';
import { carriedKg, carrying } from './kit-lead.ts';

/** Who is flown: a saved dive and a demonstration bring a rig and no setup. */
export interface Flown {
  readonly rig: Rig;
  readonly setup: Setup | null;
}

/** A second diver beside one who is flown. */
export interface Other extends Flown {
  /** Jacket gas at the start more than the first one's, m³ where he begins. */
  readonly moreJacketM3: number;
  /** What he has that the first has not: "2 kg more lead". */
  readonly words: string;
  /** The same seen from him: "2 kg less lead". */
  readonly back: string;
}

/** Lead and jacket gas that can be put on or taken off. */
const LEAD_KG = [1, 2, 4];
const JACKET_L = [1, 2, 4];
/** The usual difference: the one that a class learns from first. */
export const USUAL_DIFFERENCE = 'lead:2';
/** Ids of a setup of one's own file, and of the diver who was flown before this one. */
export const OWN = 'own';
export const FORMER = 'former';

/** Whether an id is one of those that `otherOf` knows, as far as that can be said without knowing who is flown. */
export function isDifference(id: string): boolean {
  const [kind, what = ''] = id.split(/:(.*)/s);
  const isOf = (amounts: readonly number[]) => amounts.some((one) => what === `${one}` || what === `${-one}`);
  if (kind === 'lead') return isOf(LEAD_KG);
  if (kind === 'jacket') return isOf(JACKET_L);
  if (kind === 'ready') return READY_SETUPS.some((one) => one.id === what);
  return kind === 'change' ? what !== '' : id === OWN || id === FORMER;
}

/**
 * The second diver of a difference. Ids: `lead:2` kilograms, `jacket:-1` litres at the start, `change:` and the words of a change of
 * kit and water, `ready:` and the id of a ready setup, `own`, `former`.
 * @param ready fetches a ready setup
 * @param own the setup of one's own file, or of the diver who was flown before
 * @param words what he has that the first has not, of the diver who was flown before
 * @throws {RangeError} where this diver cannot have that difference, in words for a person
 */
export async function otherOf(
  id: string,
  flown: Flown,
  ready: (id: string) => Promise<Setup>,
  own: Setup | null,
  words = '',
): Promise<Other> {
  const colon = `${id}:`.indexOf(':');
  const [kind, what] = [id.slice(0, colon), id.slice(colon + 1)];
  const amount = Number(what);
  if (kind === 'lead' && amount) return withLead(flown, amount);
  if (kind === 'jacket' && amount)
    return { ...flown, moreJacketM3: amount * 1e-3, words: gasWords(amount), back: gasWords(-amount) };
  if (kind === 'ready') return inSameWater(flown, await ready(what));
  if (kind === OWN && own) return inSameWater(flown, own);
  if (kind === FORMER && own)
    return { setup: own, rig: rigOf(own), moreJacketM3: 0, words: words || own.name, back: flown.rig.name };
  if (kind !== 'change') throw new RangeError('choose what is different about the second diver');
  const change = flown.setup && leadChanges(flown.setup).find((one) => one.change === what);
  if (!change) throw new RangeError(`the diver who is flown now cannot have “${what}”; choose another difference`);
  return { setup: change.setup, rig: rigOf(change.setup), moreJacketM3: 0, words: what, back: 'without that change' };
}

/** What can be different about a second diver, one thing at a time. */
export function differencesFor({ rig, setup }: Flown, own: Setup | null, former = false): readonly PairGroup[] {
  const kg = rig.lead.reduce((sum, { massKg }) => sum + massKg, 0);
  const less = LEAD_KG.filter((one) => one <= kg);
  const option = (id: string, words: string) => ({ id, words });
  const changes = (setup ? leadChanges(setup) : []).filter(({ group }) => group !== 'gas used');
  return [
    {
      words: 'lead',
      options: [...LEAD_KG, ...less.map((one) => -one)].map((one) => option(`lead:${one}`, leadWords(one))),
    },
    {
      words: 'jacket gas at the start',
      options: [...JACKET_L, ...JACKET_L.map((one) => -one)].map((one) => option(`jacket:${one}`, gasWords(one))),
    },
    ...[...new Set(changes.map(({ group }) => group))].map((group) => ({
      words: group,
      options: changes.filter((one) => one.group === group).map(({ change }) => option(`change:${change}`, change)),
    })),
    {
      words: 'another diver in the same water',
      options: [
        ...(own ? [former ? option(FORMER, 'who was flown before') : option(OWN, own.name)] : []),
        ...READY_SETUPS.map(({ id, name }) => option(`ready:${id}`, name)),
      ],
    },
  ];
}

function withLead({ rig, setup }: Flown, kg: number): Other {
  const carried = setup ? carriedKg(setup) : 0;
  const share = Math.max(0, carried + kg) / carried;
  // In proportion, so that it sits where it sat.
  const other = setup && {
    ...(carried > 0
      ? { ...setup, lead: setup.lead.map((piece) => ({ ...piece, massKg: piece.massKg * share })) }
      : carrying(setup, kg)),
  };
  return {
    rig: withMoreLead(rig, kg),
    setup: other,
    moreJacketM3: 0,
    words: leadWords(kg),
    back: leadWords(-kg),
  };
}

/** Two divers compare in one water: that of the first, where it is known. */
function inSameWater({ setup, rig }: Flown, other: Setup): Other {
  const own = setup ? { ...other, water: setup.water } : other;
  return { setup: own, rig: rigOf(own), moreJacketM3: 0, words: other.name, back: rig.name };
}

const amountWords = (amount: number, unit: string) => `${Math.abs(amount)} ${unit} ${amount > 0 ? 'more' : 'less'}`;

function leadWords(kg: number): string {
  return `${amountWords(kg, 'kg')} lead`;
}

function gasWords(litres: number): string {
  return `${amountWords(litres, 'L')} in the jacket at the start`;
}
