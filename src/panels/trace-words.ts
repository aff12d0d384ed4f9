import { TICKS_PER_S, type DiveEvent, type EventKind } from '../dive/index.ts';
import type { Units } from './settings.ts';
import type { TraceData } from './trace-data.ts';
import { valueText, type TraceKind } from './trace-kinds.ts';
import { FOOT_M, NEUTRAL_KG, POUND_KG, STILL_MPS } from './units.ts';

/** What each event is called over a trace; what ends by itself has its words in table and file only. */
const EVENT_WORDS: Readonly<Record<EventKind, readonly [words: string, marked: boolean]>> = {
  'head-out': ['head out', true],
  'head-under': ['head under', true],
  'bottom-touched': ['bottom', true],
  'ledge-touched': ['ledge', true],
  'lifted-off': ['lifted off', true],
  'lead-released': ['lead let go', true],
  'lead-taken-off': ['lead taken off', true],
  'lead-put-on': ['lead put on', true],
  'lung-overpressure': ['lungs stretched', true],
  'lung-overpressure-critical': ['lungs stretched too far', true],
  'lung-overpressure-end': ['lungs no longer stretched', false],
  'lung-squeeze': ['lungs squeezed', true],
  'lung-squeeze-end': ['lungs no longer squeezed', false],
  'suit-squeeze': ['suit squeezes', true],
  'suit-squeeze-end': ['suit squeezes no longer', false],
  'relief-open': ['relief valve open', true],
  'relief-shut': ['relief valve shut', false],
  'regulator-empty': ['nothing left to breathe', true],
  'inflator-dead': ['inflator gives no more', true],
  'loop-below-minimum': ['loop too empty', true],
  'loop-filled': ['loop filled', false],
  'gas-lost': ['gas lost', true],
  'nudged-up': ['nudged upwards', true],
  'nudged-down': ['nudged downwards', true],
  'down-current': ['the water sinks', true],
  'up-current': ['the water rises', true],
  'current-end': ['the water is still again', true],
};

/** An event in words. */
export function traceEventWords({ kind }: DiveEvent): string {
  return EVENT_WORDS[kind][0];
}

/** Events that get a mark over the traces. */
export function markedEvents(events: readonly DiveEvent[]): readonly DiveEvent[] {
  return events.filter(({ kind }) => EVENT_WORDS[kind][1]);
}

/** What happened within a tenth of a second of a row, in words. */
export function eventsAt(events: readonly DiveEvent[], s: number): string {
  const near = events.filter(({ tick }) => tick / TICKS_PER_S > s - 0.1 + 1e-9 && tick / TICKS_PER_S <= s + 1e-9);
  return near.map(traceEventWords).join('; ');
}

/** A moment to the tenth of a second: "1:05.3". */
export function momentText(s: number): string {
  const tenths = Math.max(0, Math.round(s * 10));
  const seconds = Math.floor(tenths / 10);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}.${tenths % 10}`;
}

/** Values this small, in shown units, are neither rising nor sinking, light nor heavy. */
const STILL = { metric: STILL_MPS * 60, imperial: (STILL_MPS * 60) / FOOT_M };
const NEUTRAL = { metric: NEUTRAL_KG, imperial: NEUTRAL_KG / POUND_KG };

/** A value with what it means: "depth 8.2 m", "sinking 4 m/min", "0.3 kg heavy". */
export function traceValueWords({ id, words, shown }: TraceKind, value: number, units: Units): string {
  const text = valueText(id === 'speed' || id === 'force' ? Math.abs(value) : value, shown[units]);
  if (id === 'speed') return Math.abs(value) < STILL[units] ? 'still' : `${value > 0 ? 'sinking' : 'rising'} ${text}`;
  if (id === 'force') return Math.abs(value) <= NEUTRAL[units] ? 'neutral' : `${text} ${value > 0 ? 'light' : 'heavy'}`;
  return `${words} ${text}`;
}

/** All that stands at a row, as a sentence for those who hear it. */
export function rowWords(
  data: TraceData,
  row: number,
  { kinds, events, units }: { kinds: readonly TraceKind[]; events: readonly DiveEvent[]; units: Units },
): string {
  if (row < 0) return 'nothing recorded yet';
  const s = data.secondsAt(row);
  const values = kinds.map((kind) => traceValueWords(kind, data.valueOf(kind.id, row), units));
  const [top, bottom] = [data.at('bandTop', row), data.at('bandBottom', row)];
  const depth = data.valueOf('depth', row);
  const place =
    top === null || bottom === null ? '' : depth >= top && depth <= bottom ? 'in the band' : 'outside the band';
  const fast = data.at('tooFast', row) === null ? '' : 'faster than the limit';
  const said = [...values, place, fast, eventsAt(events, s)].filter(Boolean).join(', ');
  return `${momentText(s)}: ${said}`;
}
