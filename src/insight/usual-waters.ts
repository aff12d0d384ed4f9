import { rigOf, type Setup, type WaterSetup } from '../diver/index.ts';
import { plain } from './usual-kit.ts';

/** A setup with one thing changed, and what in plain words. */
export interface Named {
  readonly change: string;
  readonly setup: Setup;
}

/** Salt of the waters compared, psu; sea as where a setup file leaves it out. Common practice, no source. */
const WATERS = [
  ['fresh water', 0],
  ['brackish water', 10],
  ['sea water', 35],
] as const;

/** Below 0.5 psu water counts as fresh, from 30 on as sea. Common practice, no source. */
function waterName({ salinityPsu, densityKgPerM3, layers }: WaterSetup): string {
  if (layers) return 'layers';
  if (densityKgPerM3 !== undefined) return `water of ${plain(densityKgPerM3)} kg/m³`;
  return WATERS[salinityPsu < 0.5 ? 0 : salinityPsu < 30 ? 1 : 2][0];
}

/** The setup in each of the other waters, at the temperature and under the air that it has. */
export function otherWaters(setup: Setup): Named[] {
  const { layers, densityKgPerM3, ...water } = setup.water;
  const now = waterName(setup.water);
  return WATERS.filter(([name]) => name !== now).map(([name, salinityPsu]) => ({
    change: `${name}${name === 'brackish water' ? ` of ${salinityPsu} psu` : ''}${layers ? ' all the way down' : ''} instead of ${now}`,
    setup: { ...setup, water: { ...water, salinityPsu } },
  }));
}

/** The altitude compared with that of the sea, metres: that of the ready mountain lake. A thought experiment. */
const ALTITUDE_M = 2000;

/** The air above the water matters to the lead where foam holds gas; else only the gut feels it. */
export function otherAltitudes(setup: Setup): Named[] {
  const { surfacePressureBar, ...water } = setup.water;
  const { foam } = rigOf(setup);
  if (foam.gasM3 === 0 || foam.softness === 0) return [];
  const place = (altitudeM: number) => (altitudeM === 0 ? 'at sea level' : `at ${plain(altitudeM)} m of altitude`);
  const now =
    surfacePressureBar === undefined ? place(water.altitudeM) : `under ${plain(surfacePressureBar)} bar of air`;
  return [0, ALTITUDE_M]
    .filter((altitudeM) => place(altitudeM) !== now)
    .map((altitudeM) => ({
      change: `${place(altitudeM)} instead of ${now}`,
      setup: { ...setup, water: { ...water, altitudeM } },
    }));
}
