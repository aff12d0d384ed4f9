import type { RecoveryMap } from '../insight/index.ts';
import { UsageError, within } from './usage.ts';

/**
 * The part of a map between two depths; left out, as far as the map goes.
 * @throws {UsageError} when the map does not go so far, or the depths are the wrong way round
 */
export function croppedMap(map: RecoveryMap, top: number | undefined, bottom: number | undefined): RecoveryMap {
  const why = 'what the map shows';
  const topM = top === undefined ? map.topM : within('--top', top, map.topM, map.bottomM, why);
  const bottomM = bottom === undefined ? map.bottomM : within('--bottom', bottom, map.topM, map.bottomM, why);
  if (!(topM < bottomM))
    throw new UsageError(
      bottom === undefined
        ? `--top: found "${topM}"; allowed: less than ${bottomM}`
        : `--bottom: found "${bottomM}"; allowed: deeper than ${topM}, the top`,
    );
  const columns = map.columns.map((bands) =>
    bands
      .filter(({ fromM, toM }) => toM > topM && fromM < bottomM)
      .map((band) => ({ ...band, fromM: Math.max(band.fromM, topM), toM: Math.min(band.toM, bottomM) })),
  );
  return { ...map, topM, bottomM, columns };
}
