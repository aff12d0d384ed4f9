import type { Mishap } from '../dive/index.ts';
import type { Units } from './settings.ts';
import { FOOT_M, gaugeText } from './units.ts';

type Untimed<Kind> = Kind extends Mishap ? Omit<Kind, 'atS'> : never;

/** What is asked to go wrong now; of lead the piece that comes first is lost. */
export type MishapAsk = Untimed<Exclude<Mishap, { kind: 'lead-lost' }>> | { readonly kind: 'lead-lost' };

/** What can be asked for, and for which kit: strong enough to be seen from the back of a room, no stronger. Practice. */
export const MISHAPS: readonly (readonly [asked: MishapAsk, needs?: 'drysuit' | 'lead'])[] = [
  [{ kind: 'inflator-open', forS: 8 }],
  [{ kind: 'vent-open', forS: 8 }],
  [{ kind: 'vent-shut', forS: 15 }],
  [{ kind: 'suit-inflator-open', forS: 8 }, 'drysuit'],
  [{ kind: 'lead-lost' }, 'lead'],
  [{ kind: 'nudge', upNs: 40 }],
  [{ kind: 'nudge', upNs: -40 }],
  [{ kind: 'current', downMps: 0.2, forS: 10 }],
  [{ kind: 'current', downMps: -0.2, forS: 10 }],
  [{ kind: 'gas-low', leftBar: 40 }],
];

const rateOf = (mps: number, units: Units) =>
  units === 'metric'
    ? `${Math.round(Math.abs(mps) * 60)} m/min`
    : `${Math.round((Math.abs(mps) * 60) / FOOT_M)} ft/min`;

/** On its button, before it happens. */
export function offered(asked: MishapAsk, units: Units): string {
  switch (asked.kind) {
    case 'inflator-open':
      return `inflator stuck open for ${asked.forS} s`;
    case 'vent-open':
      return `vent stuck open for ${asked.forS} s`;
    case 'vent-shut':
      return `vent stuck shut for ${asked.forS} s`;
    case 'suit-inflator-open':
      return `suit inflator stuck open for ${asked.forS} s`;
    case 'lead-lost':
      return 'a piece of lead is lost';
    case 'nudge':
      return asked.upNs > 0 ? 'a nudge upwards' : 'a nudge downwards';
    case 'current':
      return `${asked.downMps > 0 ? 'a down-current' : 'an up-current'} of ${rateOf(asked.downMps, units)} for ${asked.forS} s`;
    case 'gas-low':
      return `gas runs low: ${gaugeText(asked.leftBar, units)} left`;
  }
}

/** Said when it happens. */
export function said(asked: MishapAsk, units: Units): string {
  switch (asked.kind) {
    case 'inflator-open':
      return 'The inflator sticks open.';
    case 'vent-open':
      return 'The vent sticks open.';
    case 'vent-shut':
      return 'The vent sticks shut.';
    case 'suit-inflator-open':
      return 'The suit inflator sticks open.';
    case 'lead-lost':
      return 'A piece of lead is lost.';
    case 'nudge':
      return `Somebody bumps into the diver and pushes him ${asked.upNs > 0 ? 'up' : 'down'}.`;
    case 'current':
      return `The water ${asked.downMps > 0 ? 'sinks' : 'rises'} at ${rateOf(asked.downMps, units)} and takes the diver along.`;
    case 'gas-low':
      return `Gas is low: ${gaugeText(asked.leftBar, units)} left.`;
  }
}
