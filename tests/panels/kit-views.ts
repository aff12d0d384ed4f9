import type { KitDiver, KitHover, KitRow, KitView } from '../../src/panels/kit-view.ts';

/** A hover that breath keeps between two depths. */
export const hover = (change: Partial<KitHover> = {}): KitHover => ({
  depthM: 10,
  bottomM: 40,
  leftN: 0,
  reachM: [6.83, 20.71],
  lungs: { leastM3: 1.8e-3, mostM3: 5.8e-3 },
  doublingS: 7.62,
  openLungs: true,
  ...change,
});

/** A diver who carries half a kilogram too much. */
export const diver = (change: Partial<KitDiver> = {}): KitDiver => ({
  name: 'A diver',
  note: '',
  neededKg: 3.7,
  carriedKg: 4.2,
  up: [{ name: 'suit', kg: 3, isGas: true, saidKg: 3 }],
  down: [{ name: 'lead', kg: 3.5, isGas: false, saidKg: 3.5 }],
  hover: hover(),
  figure: {
    foamMm: 5,
    suitGasM3: 0,
    suitWords: '5 mm',
    cylinders: [{ waterL: 12, material: 'steel' }],
    leadKg: [2, 2.2],
    loop: false,
  },
  ...change,
});

/** Fresh water instead of sea water. */
export const fresh = (change: Partial<KitRow> = {}): KitRow => ({
  change: 'fresh water instead of sea water',
  group: 'water',
  neededKg: 1.4,
  deltaKg: -2.3,
  ofLead: false,
  hover: hover({ reachM: [7, 19.84], doublingS: 7.4 }),
  ...change,
});

/** The place with two rows, none of them tried. */
export const view = (change: Partial<KitView> = {}): KitView => ({
  setupId: 'two-piece',
  setups: [
    { id: 'two-piece', name: 'Two-piece', note: 'Thick.' },
    { id: 'pool', name: 'Pool', note: 'Shallow.' },
  ],
  ownWords: 'the diver in the water',
  basis: diver(),
  rows: [fresh(), fresh({ change: '7 mm instead of 5 mm', group: 'suit', deltaKg: 1.5, neededKg: 5.2 })],
  triedRow: null,
  tried: null,
  heads: [
    { cylinder: 'full', breath: 'breathed out', waterlineM: null, words: 'goes under', coveredN: -19.6133 },
    { cylinder: 'reserve', breath: 'full breath', waterlineM: 0.12, words: 'at eye level', coveredN: 20 },
  ],
  depths: [
    { depthM: 0, suitLossN: 0, jacketM3: 0.5e-3, jacketSurfaceM3: 0.5e-3, leftN: 0, ventPerMetreM3: 0.4e-3 },
    { depthM: 10, suitLossN: 29.42, jacketM3: 3.8e-3, jacketSurfaceM3: 7.6e-3, leftN: 0, ventPerMetreM3: 0.36e-3 },
  ],
  cylinderLossN: 20.6,
  goesAlong: true,
  canUndo: false,
  ...change,
});
