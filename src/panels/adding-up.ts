/** Whether parts come to nothing as they are written, with so many digits after the point. */
export function addUpWith(digits: number, parts: readonly number[]): boolean {
  return parts.reduce((sum, one) => sum + Math.round(one * 10 ** digits), 0) === 0;
}

/**
 * Amounts as they are written with so many digits after the point: each rounded up or down, the nearest first, so that the written ones
 * add up to their sum as it is rounded. Each is off by less than one in the last digit.
 */
export function writtenAddingUp(amounts: readonly number[], digits = 1): number[] {
  const scale = 10 ** digits;
  const low = amounts.map((one) => Math.floor(one * scale));
  const wanted = Math.round(amounts.reduce((sum, one) => sum + one, 0) * scale);
  const missing = wanted - low.reduce((sum, one) => sum + one, 0);
  const left = (i: number) => amounts[i]! * scale - low[i]!;
  const upwards = new Set([...amounts.keys()].sort((a, b) => left(b) - left(a)).slice(0, Math.max(missing, 0)));
  return low.map((one, i) => (one + (upwards.has(i) ? 1 : 0)) / scale);
}
