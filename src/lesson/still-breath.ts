import { HEAD_OUT_M } from '../diver/index.ts';
import { rowsOf } from './goal.ts';

/** The breath stands still when volume or gas of the lungs keeps within this, m³, for so long: a third of a usual breath. Practice. */
const STILL_M3 = 0.32e-3;
const STILL_S = 5;

interface Lungs {
  readonly depthM: Float64Array;
  readonly lungM3: Float64Array;
  readonly lungMol: Float64Array;
  /** 1 where the breath is not the automatic one, which never stops however slow it is. */
  readonly own: Uint8Array;
}

/** Rows of all stretches of five seconds and more in which the lungs stand still under water: a fact of the recording. */
export function stillRows({ depthM, lungM3, lungMol, own }: Lungs): Uint8Array {
  const still = new Uint8Array(depthM.length);
  const back = rowsOf(STILL_S);
  for (let row = back; row < still.length; row++) {
    const asVolume = lungM3[row]! / lungMol[row]!;
    if (!within(lungM3, row, back, STILL_M3) && !within(lungMol, row, back, STILL_M3 / asVolume)) continue;
    let counts = true;
    for (let i = row - back; i <= row; i++) counts &&= own[i] === 1 && depthM[i]! >= HEAD_OUT_M;
    if (counts) still.fill(1, row - back, row + 1);
  }
  return still;
}

/** Whether the rows up to one differ by no more than a limit. */
function within(column: Float64Array, row: number, back: number, most: number): boolean {
  let least = column[row]!;
  let greatest = least;
  for (let i = row - 1; i >= row - back; i--) {
    const here = column[i]!;
    if (here < least) least = here;
    else if (here > greatest) greatest = here;
    if (greatest - least > most) return false;
  }
  return true;
}
