import { readFileSync } from 'node:fs';
import { decode } from 'fast-png';
import { describe, expect, test } from 'vitest';
import { exampleWith, ran, resultOf, useFolder } from './fixture.ts';
import type { PrintedInsight } from './insight-fixture.ts';
import type { PrintedBand, PrintedFile, PrintedMap } from './map-fixture.ts';

const file = useFolder();
const TWO_PIECE = { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as const;
// Four kilograms more than this diver needs (landmarks of the physics).
const HEAVY = file('heavy.yaml', exampleWith(TWO_PIECE, 12.14));
const LEAD_KG = 8.14;
const NEEDED = file('needed.yaml', exampleWith(TWO_PIECE, LEAD_KG));
const NAMES = ['none', 'breath', 'fins', 'gas', 'all', 'lead', 'lost'];

type Across = PrintedMap['across'];

/** A moment of each plane, and how the words for a cell of its map are written. */
const PLANES = {
  gas: {
    words: [HEAVY, '--speed', 0.2],
    wordsAt({ surfaceL }: Across, column: number, depthM: number) {
      const { pressurePa } = resultOf<{ pressurePa: number }>('forces', HEAVY, '--depth', depthM);
      return [HEAVY, '--speed', 0.2, '--jacket', (surfaceL![column] * 101325) / pressurePa];
    },
  },
  lead: {
    words: [NEEDED, '--jacket', 0],
    wordsAt({ moreLeadKg }: Across, column: number) {
      return [file('lead.yaml', exampleWith(TWO_PIECE, LEAD_KG + moreLeadKg![column])), '--jacket', 0];
    },
  },
  speed: {
    words: [HEAVY, '--jacket', 0],
    wordsAt({ speedMpmin }: Across, column: number) {
      return [HEAVY, '--jacket', 0, '--speed', speedMpmin![column] / 60];
    },
  },
};

/** The gentlest means that insight says stops the diver. */
const gentlest = ({ stopping }: PrintedInsight) => stopping.find(({ stops }) => stops)?.means ?? 'lost';

/** Whether what insight says of a moment is what a band says: it sees the one way that the diver is going. */
function agrees(seen: PrintedInsight, { means, way }: PrintedBand): boolean {
  if (way === seen.way) return gentlest(seen) === means;
  return gentlest(seen) === 'none';
}

/** Cells near both ends of their bands, where a map that is wrong shows it first. */
function* cellsOf({ columns }: PrintedMap): Generator<{ column: number; depthM: number; band: PrintedBand }> {
  for (let column = 0; column < columns.length; column++)
    for (const band of columns[column])
      if (band.toM - band.fromM > 0.6)
        for (const depthM of [band.fromM + 0.3, band.toM - 0.3]) yield { column, depthM, band };
}

describe('map', () => {
  test.each(['gas', 'lead', 'speed'])(
    'across %s: ascending values, bands from top to bottom without gaps',
    (across) => {
      const map = resultOf<PrintedMap>(
        ...['map', HEAVY, '--depth', 10, '--jacket', 3, '--across', across, '--columns', 24],
      );
      const values = map.across.surfaceL ?? map.across.moreLeadKg ?? map.across.speedMpmin!;
      expect(map.across.kind).toBe(across);
      expect(values).toHaveLength(24);
      for (let i = 1; i < values.length; i++) expect(values[i]).toBeGreaterThan(values[i - 1]);
      expect(map.columns).toHaveLength(24);
      for (const bands of map.columns) {
        expect(bands[0].fromM).toBe(map.topM);
        expect(bands.at(-1)!.toM).toBe(map.bottomM);
        bands.forEach(({ fromM, toM, means, way }, i) => {
          expect(toM).toBeGreaterThan(fromM);
          if (i > 0) expect(fromM).toBe(bands[i - 1].toM);
          expect(NAMES).toContain(means);
          expect(means === 'none' ? [0] : [1, -1]).toContain(way);
        });
      }
      expect(map.here['depthM']).toBe(10);
      expect(map.caution).toContain('Not for planning dives');
    },
  );

  test('gas is litres at one standard atmosphere: three at 10 m are three times the pressure there', () => {
    const { pressurePa } = resultOf<{ pressurePa: number }>('forces', HEAVY, '--depth', 10);
    const { across, here } = resultOf<PrintedMap>('map', HEAVY, '--depth', 10, '--jacket', 3, '--columns', 8);
    expect(across.of).toBe('jacket');
    expect(here['surfaceL']).toBeCloseTo((3 * pressurePa) / 101325, 9);
    const suit = resultOf<PrintedMap>('map', 'drysuit-membrane', '--depth', 10, '--suit-gas', 9, '--columns', 8);
    expect(suit.across.of).toBe('suit');
    expect(resultOf<PrintedMap>('map', 'closed-loop', '--depth', 10, '--columns', 8).across.of).toBe('loop');
  });

  test('speed is metres a minute, lead kilograms more than now', () => {
    const words = ['map', HEAVY, '--depth', 10, '--speed', 0.25, '--columns', 8] as const;
    expect(resultOf<PrintedMap>(...words, '--across', 'speed').here['speedMpmin']).toBeCloseTo(15, 9);
    expect(resultOf<PrintedMap>(...words, '--across', 'lead').here['moreLeadKg']).toBe(0);
  });

  test.each(Object.keys(PLANES) as (keyof typeof PLANES)[])(
    'across %s: cells say what insight says of the same moment',
    { timeout: 60_000 },
    (across) => {
      const { words, wordsAt } = PLANES[across];
      const same = ['--cylinder', 120, '--lungs', 3.2];
      const ask = [...words, '--depth', 10, ...same, '--across', across, '--columns', 9];
      const map = resultOf<PrintedMap>('map', ...ask);
      const wrong: unknown[] = [];
      let cells = 0;
      for (const { column, depthM, band } of cellsOf(map)) {
        const { out, err } = ran('insight', ...wordsAt(map.across, column, depthM), '--depth', depthM, ...same);
        // A jacket that is fuller than it can be at that depth is no moment of a dive.
        if (/what the jacket holds/.test(err)) continue;
        cells++;
        const seen = JSON.parse(out) as PrintedInsight;
        if (!agrees(seen, band)) wrong.push({ column, depthM, band, way: seen.way, gentlest: gentlest(seen) });
      }
      expect(wrong).toEqual([]);
      expect(cells).toBeGreaterThan(60);
    },
  );

  test('needs more, the deeper the diver with an empty jacket is: breath is soon too late', () => {
    const map = resultOf<PrintedMap>('map', HEAVY, '--depth', 10, '--speed', 0.3, '--jacket', 0, '--columns', 8);
    const [empty] = map.columns;
    const sinking = empty.filter(({ way }) => way === 1).map(({ means }) => NAMES.indexOf(means));
    expect(sinking.length).toBeGreaterThan(2);
    expect(sinking).toEqual([...sinking].sort((a, b) => a - b));
  });

  test('shows the depths asked for', () => {
    const words = ['map', HEAVY, '--depth', 10, '--columns', 8] as const;
    const whole = resultOf<PrintedMap>(...words);
    const part = resultOf<PrintedMap>(...words, '--top', 5, '--bottom', 15);
    expect([part.topM, part.bottomM]).toEqual([5, 15]);
    const meansAt = (map: PrintedMap, column: number, depthM: number) =>
      map.columns[column].find(({ toM }) => depthM < toM)!.means;
    for (const column of [0, 1, 2, 3])
      for (const depthM of [5.5, 8.25, 11.3, 14.5])
        expect(meansAt(part, column, depthM)).toBe(meansAt(whole, column, depthM));
  });
});

describe('map --out', () => {
  const words = ['map', HEAVY, '--depth', 10, '--jacket', 3] as const;

  test('writes a picture of 96 by 64 cells of 8 pixels unless told otherwise', () => {
    const path = file('map.png');
    const said = resultOf<PrintedFile>(...words, '--out', path);
    expect(said).toMatchObject({ file: path, across: 'gas', columns: 96, rows: 64, widthPx: 768, heightPx: 512 });
    const { width, height, channels, data, text } = decode(readFileSync(path), { checkCrc: true });
    expect([width, height, channels]).toEqual([768, 512, 1]);
    expect(text['Description']).toMatch(/^Downward: depth, m, .* Across: jacket gas, litres at 101325 Pa, 0 to /);
    expect(text['Description']).toContain('Not for planning dives');
    // The diver's cell holds the dot: ink in its middle, paper around that.
    const { across } = resultOf<PrintedMap>(...words);
    const values = across.surfaceL!;
    const step = (values[95] - values[0]) / 95;
    const x = ((said.here['surfaceL'] - values[0]) / step + 0.5) * 8;
    const y = ((10 - said.topM) / (said.bottomM - said.topM)) * 512;
    const at = (dx: number, dy: number) => data[Math.floor(y + dy) * width + Math.floor(x + dx)];
    expect(at(0, 0)).toBe(26);
    expect([at(4, 0), at(-4, 0), at(0, 4), at(0, -4)]).toEqual([248, 248, 248, 248]);
  });

  test('draws as many cells as are asked for', () => {
    const path = file('small.PNG');
    resultOf<PrintedFile>(...words, '--across', 'speed', '--columns', 12, '--rows', 5, '--out', path);
    const { width, height } = decode(readFileSync(path));
    expect([width, height]).toEqual([96, 40]);
  });

  test('writes the numbers that it would print', () => {
    const path = file('map.json');
    const said = resultOf<PrintedFile>(...words, '--columns', 8, '--out', path);
    expect(readFileSync(path, 'utf8')).toBe(ran(...words, '--columns', 8).out);
    expect(said).toMatchObject({ file: path, columns: 8 });
    expect(said).not.toHaveProperty('widthPx');
  });
});

describe('map refuses with exit 2 and one line', () => {
  test.each<[what: string, words: (string | number)[], says: RegExp]>([
    [
      'a quantity that there is none of',
      ['--across', 'sped'],
      /--across: found "sped": write speed; allowed: gas, lead/,
    ],
    ['half a column', ['--columns', 9.5], /--columns: found "9.5"; allowed: a whole number/],
    ['too few columns', ['--columns', 7], /--columns: found "7"; allowed: a number from 8 to 400/],
    ['half a row', ['--rows', 9.5], /--rows: found "9.5"; allowed: a whole number/],
    ['too many rows', ['--rows', 401], /--rows: found "401"; allowed: a number from 2 to 400/],
    ['a top below the ground', ['--top', 39.9], /--top: found "39.9"; allowed: from 0.6 to 39.75, what the map shows/],
    ['a top in the air', ['--top', 0], /--top: found "0"; allowed: from 0.6 to 39.75/],
    ['a bottom below the floor', ['--floor', 18, '--bottom', 20], /--bottom: found "20"; allowed: from 0.6 to 18/],
    ['a map upside down', ['--top', 9, '--bottom', 8], /--bottom: found "8"; allowed: deeper than 9, the top/],
    ['a map of no height', ['--top', 39.75], /--top: found "39.75"; allowed: less than 39.75/],
    [
      'a file of another kind',
      ['--out', 'map.gif'],
      /--out: found "map.gif"; allowed: a file that ends in .png or .json/,
    ],
    ['a place that cannot be written', ['--out', 'no/such/map.png'], /--out: "no\/such\/map.png" cannot be written/],
    ['what insight refuses', ['--jacket', 30], /--jacket: found "30"; allowed: from 0 to 18/],
  ])('%s', (_, words, says) => {
    const { code, out, err } = ran('map', 'temperate-sea', '--depth', 5, ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err.match(/\n/g)).toHaveLength(1);
  });
});
