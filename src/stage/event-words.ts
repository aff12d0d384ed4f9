import { TICKS_PER_S, type DiveEvent, type EventKind } from '../dive/index.ts';

/** What no part of the picture shows by itself, in the fewest words: it stands on the line at its moment. */
const DISTURBED_WORDS: Readonly<Partial<Record<EventKind, string>>> = {
  'gas-lost': 'gas low',
  'nudged-up': 'nudge upwards',
  'nudged-down': 'nudge downwards',
  'down-current': 'down-current',
  'up-current': 'up-current',
  'current-end': 'current ends',
};

/** What an event is called on the line; undefined for those that the picture shows by itself. */
export function eventWords({ kind, massKg }: DiveEvent): string | undefined {
  if (kind === 'lead-released') return `${Number((massKg ?? 0).toFixed(2))} kg let go`;
  if (kind === 'lead-taken-off') return `${Number((massKg ?? 0).toFixed(2))} kg off`;
  if (kind === 'lead-put-on') return `${Number((massKg ?? 0).toFixed(2))} kg on`;
  if (kind === 'bottom-touched') return 'touched the bottom';
  if (kind === 'ledge-touched') return 'touched the ledge';
  if (kind === 'relief-open') return 'relief valve opened';
  if (kind === 'regulator-empty') return 'nothing left to breathe';
  if (kind === 'lung-overpressure') return 'lungs stretched';
  return DISTURBED_WORDS[kind];
}

/** Pieces of lead that follow one another by less than this, ticks, go in one go. */
const ONE_GO = TICKS_PER_S;
const LEAD_MOVED: readonly string[] = ['lead-released', 'lead-taken-off', 'lead-put-on'] satisfies DiveEvent['kind'][];

/** An event with all the lead that went the same way right before it: four pieces of half a kilogram in a second are two. */
export function inOneGo(events: readonly DiveEvent[], last: number): DiveEvent {
  const event = events[last]!;
  if (!LEAD_MOVED.includes(event.kind)) return event;
  let [massKg, { tick }] = [event.massKg ?? 0, event];
  for (let i = last - 1; i >= 0 && tick - events[i]!.tick <= ONE_GO; i--) {
    const before = events[i]!;
    if (before.kind !== event.kind) continue;
    massKg += before.massKg ?? 0;
    ({ tick } = before);
  }
  return { ...event, massKg };
}

/** Lead that went or came, each go once, at the moment of its last piece. */
export function leadMoves(events: readonly DiveEvent[]): DiveEvent[] {
  return events.flatMap((event, i) => {
    if (!LEAD_MOVED.includes(event.kind)) return [];
    const goesOn = events.slice(i + 1).some(({ kind, tick }) => kind === event.kind && tick - event.tick <= ONE_GO);
    return goesOn ? [] : [inOneGo(events, i)];
  });
}
