import { beforeAll, expect, test } from 'vitest';
import { traceCsv } from '../../src/panels/trace-csv.ts';
import type { TracesView } from '../../src/panels/trace-view.ts';
import { flownView } from './flown-traces.ts';

let view: TracesView;

beforeAll(() => {
  view = flownView();
});

/** A reader of its own for what RFC 4180 allows. */
function parsed(text: string): string[][] {
  return text
    .split('\r\n')
    .slice(0, -1)
    .map((line) =>
      [...`${line},`.matchAll(/("(?:[^"]|"")*"|[^,]*),/g)].map(([, cell]) =>
        cell!.startsWith('"') ? cell!.slice(1, -1).replaceAll('""', '"') : cell!,
      ),
    );
}

test('SI: every column says its unit, every row has every column, numbers are those of the recording', () => {
  const [head, ...rows] = parsed(traceCsv(view, 'SI'));
  expect(head).toEqual([
    'time (s)',
    'depth (m)',
    'speed, downward positive (m/s)',
    'net force at mid-breath, upward positive (N)',
    'lungs (m³)',
    'jacket (m³)',
    'cylinder (Pa absolute)',
    'net force of the moment, upward positive (N)',
    'band from (m)',
    'band to (m)',
    'limit rising (m/s)',
    'limit sinking (m/s)',
    'events',
  ]);
  expect(rows).toHaveLength(view.recording.rows);
  rows.forEach((row, i) => {
    expect(row).toHaveLength(head!.length);
    const { depthM, speedMps, lungM3, cylinderPa, netN } = view.recording.row(i);
    const near = (cell: string, value: number) =>
      expect(Math.abs(Number(cell) - value)).toBeLessThanOrEqual(1e-8 * Math.abs(value));
    near(row[0]!, i / 10);
    near(row[1]!, depthM);
    near(row[2]!, speedMps);
    near(row[4]!, lungM3);
    near(row[6]!, cylinderPa);
    near(row[7]!, netN);
  });
});

test('units shown are those in the head: feet and pounds convert back to metres and newtons', () => {
  const [, ...si] = parsed(traceCsv(view, 'SI'));
  const [head, ...shown] = parsed(traceCsv(view, 'imperial'));
  expect(head!.slice(1, 4)).toEqual([
    'depth (ft)',
    'speed, downward positive (ft/min)',
    'net force at mid-breath, upward positive (lb)',
  ]);
  for (let i = 0; i < si.length; i += 53) {
    expect(Number(shown[i]![1]) * 0.3048).toBeCloseTo(Number(si[i]![1]), 6);
    expect(Number(shown[i]![3]) * 4.4482216).toBeCloseTo(Number(si[i]![3]), 4);
  }
});

test('each event stands in the row after which it happened, once', () => {
  const [, ...rows] = parsed(traceCsv(view, 'metric'));
  const said = rows.flatMap((row) => (row.at(-1) ? row.at(-1)!.split('; ') : []));
  expect(view.events.length).toBeGreaterThan(1);
  const within = view.events.filter(({ tick }) => tick <= (view.recording.rows - 1) * 12);
  expect(said).toHaveLength(within.length);
});
