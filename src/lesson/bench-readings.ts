import type { DeepView, TankView } from '../bench/index.ts';
import type { BenchQuantity, BenchRange } from './bench-lesson.ts';

/** What is read of a bench: its tank, or its column. */
export interface BenchSeen {
  readonly tank: TankView | null;
  readonly deep: DeepView | null;
}

/** Whether a reading is within its limits now. What cannot be read is not. */
export function readsIn(seen: BenchSeen, { what, thing, least, most }: BenchRange): boolean {
  const value = seen.tank ? tankReads(seen.tank, what, thing) : seen.deep ? columnReads(seen.deep, what, thing) : NaN;
  return value >= least && value <= most;
}

function tankReads(tank: TankView, what: BenchQuantity, nth: number | null): number {
  const one = nth === null ? tank.things.find(({ id }) => id === tank.chosenId) : tank.things[nth - 1];
  if (!one) return NaN;
  const chosen = one.id === tank.chosenId;
  switch (what) {
    case 'held':
      return tank.hand !== null && (chosen || tank.set === 'stones') ? 1 : 0;
    case 'hung':
      return tank.hookYM !== null && chosen ? 1 : 0;
    case 'speedMps':
      return one.speedMps;
    case 'freeboardMm':
      return one.freeboardM * 1000;
    case 'draughtMm':
      return one.draughtM * 1000;
    case 'clearMm':
      return (tank.heightM - Math.max(...one.solid.map(({ yM }) => yM))) * 1000;
    case 'balanceN':
      return one.balanceN;
    case 'netN':
      return one.buoyantN - one.weightN;
    case 'displacedMl':
      return one.submergedM3 * 1e6;
    case 'glassMl':
      return tank.spoutYM === null ? NaN : tank.glassM3 * 1e6;
    case 'waterKgPerM3':
      return tank.densityKgPerM3;
    case 'depthM':
    case 'gasL':
    case 'squeezeKPa':
      return NaN;
  }
}

function columnReads(deep: DeepView, what: BenchQuantity, nth: number | null): number {
  const body = deep.bodies[(nth ?? 1) - 1];
  if (!body) return NaN;
  switch (what) {
    case 'held':
      return deep.heldM === null ? 0 : 1;
    case 'speedMps':
      return Math.abs(body.speedMps);
    case 'netN':
      return body.netN;
    case 'depthM':
      return body.depthM;
    case 'gasL':
      return body.gasM3 * 1e3;
    case 'squeezeKPa':
      return deep.squeezePa / 1e3;
    default:
      return NaN;
  }
}
