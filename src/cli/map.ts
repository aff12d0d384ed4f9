import { writeFileSync } from 'node:fs';
import { recoveryMap, type RecoveryMap } from '../insight/index.ts';
import type { Command } from './command.ts';
import { momentOf } from './insight-moment.ts';
import { MOMENT_OPTIONS, SHALLOWEST_M, oneOf, whole } from './insight-options.ts';
import { CAUTION, DONE, printJson } from './io.ts';
import { croppedMap } from './map-crop.ts';
import { axesText, printedMap } from './map-print.ts';
import { DEEPEST_M } from './options.ts';
import { pictureOf, pngOf } from './png-map.ts';
import { UsageError, type Asked } from './usage.ts';

const ACROSS = ['gas', 'lead', 'speed'] as const;
const COLUMNS = 96;
const ROWS = 64;

/** The gentlest means that still works, over depth and one other quantity. */
export const map: Command = {
  name: 'map',
  does: 'the gentlest means that still stops the diver, over depth and gas, lead or speed; as numbers or a picture',
  options: {
    ...MOMENT_OPTIONS,
    across: { kind: 'text', shows: 'a quantity', says: `one of ${ACROSS.join(', ')}; left out: gas` },
    columns: { kind: 'number', least: 8, most: 400, says: `values across; left out: ${COLUMNS}` },
    rows: { kind: 'number', least: 2, most: 400, says: `cells downward, of a picture; left out: ${ROWS}` },
    top: { kind: 'number', least: SHALLOWEST_M, most: DEEPEST_M, says: 'metres; left out: as shallow as the map goes' },
    bottom: { kind: 'number', least: SHALLOWEST_M, most: DEEPEST_M, says: 'metres; left out: as deep as the map goes' },
    out: { kind: 'text', shows: 'a file', says: 'writes there instead: .png a picture, .json the numbers' },
  },
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { across: { kind, … }, topM, bottomM, here, columns: [[{ fromM, toM, means, way }]], caution }, a list of bands from top to
bottom for each value across. The values are surfaceL of jacket, suit or loop (litres as they would be at 101325 Pa: they stay while
nobody presses), moreLeadKg than now, or speedMpmin (down positive); here is the diver. means: none, breath, fins, gas, all, lead, as
insight has them, or lost; way: 1 sinking, -1 rising, 0 neither. A map goes from where the head is out to the ground or the floor,
that of speed over its last 8 m. With --out the result says what was written.
The picture: 8 pixels a cell, the least value at the left, depth downward. The more ink, the more it takes: blank none, dots breath,
lines across fins, lines down gas, crossed lines all, ink with paper dots lead, ink lost. White ground: the danger is sinking; grey
ground: rising. The ringed dot is the diver. The axes are written into the file as text.`,
  run(asked, io) {
    const { out } = asked.texts;
    const wanted = wantedOf(asked);
    const drawn = mapOf(asked);
    const printed = { ...printedMap(drawn), caution: CAUTION };
    if (out === undefined) {
      printJson(io, printed);
      return DONE;
    }
    const { across, columns, ...rest } = printed;
    const about = { file: out, across: across.kind, columns: columns.length };
    if (wanted.isPicture) {
      const picture = pictureOf(drawn, wanted.rows);
      write(out, pngOf(picture, `${axesText(drawn)} ${CAUTION}`));
      const { widthPx, heightPx } = picture;
      printJson(io, { ...about, rows: wanted.rows, widthPx, heightPx, ...rest });
    } else {
      write(out, `${JSON.stringify(printed, null, 2)}\n`);
      printJson(io, { ...about, ...rest });
    }
    return DONE;
  },
};

function mapOf(asked: Asked): RecoveryMap {
  const columns = whole('--columns', asked.numbers['columns'] ?? COLUMNS);
  const across = oneOf('--across', asked.texts['across'] ?? 'gas', ACROSS);
  const { rig, state, controls, ask } = momentOf(asked);
  const all = recoveryMap(rig, state, controls, ask, { across, columns });
  return croppedMap(all, asked.numbers['top'], asked.numbers['bottom']);
}

/** What a file is to hold; asked first, so that wrong words are refused before anything is reckoned. */
function wantedOf({ texts: { out }, numbers }: Asked): { readonly isPicture: boolean; readonly rows: number } {
  const rows = whole('--rows', numbers['rows'] ?? ROWS);
  if (out !== undefined && !/\.(png|json)$/i.test(out))
    throw new UsageError(`--out: found ${JSON.stringify(out)}; allowed: a file that ends in .png or .json`);
  return { isPicture: out !== undefined && /\.png$/i.test(out), rows };
}

function write(path: string, content: Uint8Array | string): void {
  try {
    writeFileSync(path, content);
  } catch {
    throw new UsageError(`--out: ${JSON.stringify(path)} cannot be written`);
  }
}
