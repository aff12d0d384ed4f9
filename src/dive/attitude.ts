const HALF_TURN = 3.141592653589793;

/** An attitude as a unit vector: cosine and sine of pitch. */
export interface Direction {
  readonly cos: number;
  readonly sin: number;
}

const TABLE: readonly Direction[] = Array.from({ length: 361 }, (_, i) => directionOf(i - 180));

/**
 * Unit vector of a whole number of degrees, −180…180. From series and reflections with + − × ÷ only, so that every engine
 * gives the same bits; quarter turns are exact.
 * @throws {RangeError} when degrees is not a whole number in that range
 */
export function direction(degrees: number): Direction {
  const found = TABLE[degrees + 180];
  if (!found) throw new RangeError(`direction: degrees must be a whole number from -180 to 180, got ${degrees}`);
  return found;
}

/** Degrees of a unit vector, −180…180: for output only, since its last bit may differ between engines. */
export function degreesOf(pitchCos: number, pitchSin: number): number {
  // eslint-disable-next-line no-restricted-syntax -- for output: no tick reads it
  return (Math.atan2(pitchSin, pitchCos) * 180) / HALF_TURN;
}

function directionOf(degrees: number): Direction {
  if (degrees < 0) {
    const up = directionOf(-degrees);
    return { cos: up.cos, sin: 0 - up.sin };
  }
  if (degrees > 90) {
    const front = directionOf(180 - degrees);
    return { cos: 0 - front.cos, sin: front.sin };
  }
  if (degrees > 45) {
    const other = directionOf(90 - degrees);
    return { cos: other.sin, sin: other.cos };
  }
  const angle = (degrees * HALF_TURN) / 180;
  const square = angle * angle;
  let sin = 0;
  let cos = 0;
  for (let k = 19; k >= 1; k -= 2) {
    sin = 1 - (square / ((k + 1) * (k + 2))) * sin;
    cos = 1 - (square / (k * (k + 1))) * cos;
  }
  return { cos, sin: angle * sin };
}
