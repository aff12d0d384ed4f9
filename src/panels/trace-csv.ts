import { bandAt, limitsAt, secondsOf } from './trace-data.ts';
import type { TraceKind } from './trace-kinds.ts';
import type { Units } from './settings.ts';
import type { Traced } from './trace-view.ts';
import { eventsAt } from './trace-words.ts';

/** In which units a file is written: SI, or as on the screen. */
export type CsvUnits = 'SI' | Units;

/** A column of the file by its head, and its values; an empty text where there is none. */
interface CsvColumn {
  readonly head: string;
  readonly at: (row: number, s: number) => number | string | null;
}

/**
 * The whole recording as comma-separated values (RFC 4180), a row each tenth of a second, with its unit in the head of each
 * column: what was recorded, the places to be, the limits in force, and events in words.
 */
export function traceCsv(traced: Traced, units: CsvUnits): string {
  const columns = columnsOf(traced, units);
  const lines = [columns.map(({ head }) => quoted(head)).join(',')];
  for (let row = 0; row < traced.recording.rows; row++) {
    const s = secondsOf(traced.recording, row);
    lines.push(columns.map(({ at }) => written(at(row, s))).join(','));
  }
  return `${lines.join('\r\n')}\r\n`;
}

function columnsOf(traced: Traced, units: CsvUnits): CsvColumn[] {
  const { recording, kinds, bands, limits, events, second = null } = traced;
  const kindOf = (id: TraceKind['id']) => kinds.find((kind) => kind.id === id)!;
  const unit = (kind: TraceKind) => (units === 'SI' ? kind.si : kind.shown[units].unit);
  const value = (kind: TraceKind, si: number | null) => (si === null || units === 'SI' ? si : kind.shown[units].of(si));
  const [depth, speed, force] = [kindOf('depth'), kindOf('speed'), kindOf('force')];
  const by = (kind: TraceKind, head: string, at: (s: number) => number | null | undefined): CsvColumn => ({
    head: `${head} (${unit(kind)})`,
    at: (_, s) => value(kind, at(s) ?? null),
  });
  return [
    { head: 'time (s)', at: (_, s) => s },
    ...kinds.map((kind): CsvColumn => ({
      head: `${kind.full} (${unit(kind)})`,
      at: (row) => value(kind, recording.at(row, kind.column)),
    })),
    {
      head: `net force of the moment, upward positive (${unit(force)})`,
      at: (row) => value(force, recording.at(row, 'netN')),
    },
    ...(second ? [depth, speed] : []).map((kind): CsvColumn => ({
      head: `second diver: ${kind.full} (${unit(kind)})`,
      at: (row) => (row < second!.rows ? value(kind, second!.at(row, kind.column)) : null),
    })),
    by(depth, 'band from', (s) => bandAt(bands, s)?.topM),
    by(depth, 'band to', (s) => bandAt(bands, s)?.bottomM),
    by(speed, 'limit rising', (s) => limitsAt(limits, s).upMps),
    by(speed, 'limit sinking', (s) => limitsAt(limits, s).downMps),
    { head: 'events', at: (_, s) => eventsAt(events, s) },
  ];
}

/** Nine significant digits: more than the model is good for, and the same in every engine. */
function written(value: number | string | null): string {
  if (value === null) return '';
  return typeof value === 'string' ? quoted(value) : String(Number(value.toPrecision(9)));
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
