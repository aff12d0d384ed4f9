import type { MapBand, RecoveryMap } from '../../src/insight/index.ts';
import type { StageOverlay, StageView } from '../../src/stage/index.ts';

/** Metres off the neutral depth at which each means stops being enough: when rising, above it, and when sinking, below. */
const rising = [
  ['none', 0.5],
  ['breath', 1.6],
  ['fins', 3],
  ['gas', 5],
  ['all', 6.5],
] as const;
const sinking = [
  ['none', 0.5],
  ['breath', 2.2],
  ['fins', 4.4],
  ['gas', 8],
  ['all', 10],
  ['lead', 13],
] as const;

/** A map as a model might give it, made up: neutral deeper with more gas, and each means enough for longer where it is deep. */
export function madeUpMap(hereM3: number, depthM: number, columns = 60, bottomM = 30): RecoveryMap {
  const values = Array.from({ length: columns }, (_, i) => (i / (columns - 1)) * 14e-3);
  return {
    across: { kind: 'gas', of: 'jacket', values },
    topM: 0,
    bottomM,
    here: { across: hereM3, depthM },
    columns: values.map((m3) => columnOf(-2 + m3 * 2.1e3, 1 + m3 * 40, bottomM)),
  };
}

function columnOf(neutralM: number, wide: number, bottomM: number): MapBand[] {
  const out: MapBand[] = [];
  const add = (fromM: number, toM: number, means: MapBand['means'], way: MapBand['way']) => {
    const [from, to] = [Math.max(0, fromM), Math.min(bottomM, toM)];
    if (to > from) out.push({ fromM: from, toM: to, means, way });
  };
  const above = [...rising].reverse();
  add(-99, neutralM - above[0]![1] * wide, 'lost', -1);
  above.forEach(([means, m], i) => {
    const inner = above[i + 1];
    if (inner) add(neutralM - m * wide, neutralM - inner[1] * wide, means, -1);
  });
  add(neutralM - rising[0][1] * wide, neutralM + sinking[0][1] * wide, 'none', 0);
  sinking.slice(1).forEach(([means, m], i) => add(neutralM + sinking[i]![1] * wide, neutralM + m * wide, means, 1));
  add(neutralM + sinking[sinking.length - 1]![1] * wide, 99, 'lost', 1);
  return out;
}

/** A recovery map with its words, one diver or two. */
export function mapOverlay(maps: readonly RecoveryMap[]): StageOverlay {
  return {
    kind: 'map',
    maps,
    acrossWords: 'gas in the jacket, litres at the surface',
    ticks: [0, 2, 4, 6, 8, 10, 12, 14].map((l) => ({ at: l * 1e-3, words: String(l) })),
    words: {
      none: 'nothing',
      breath: 'breath',
      fins: 'fins',
      gas: 'jacket',
      all: 'all at once',
      lead: 'lead',
      lost: 'too late',
    },
  };
}

/** Arrows each metre about a hilltop, as compression gives them: up above, down below, weaker the deeper. */
export function forcesOverlay(neutralM: number, stiffNPerM: number, bottomM: number): StageOverlay {
  const netN = (m: number) => -stiffNPerM * 10 * Math.log((m + 10) / (neutralM + 10));
  return {
    kind: 'forces',
    arrows: Array.from({ length: bottomM + 1 }, (_, m) => ({ depthM: m, netN: netN(m) })),
  };
}

/** Ledges of a diver who sinks from a depth at a moment: some near, one off the paper, one lost. */
export function ledgesOverlay(nowS: number, depthM: number): StageOverlay {
  const ledge = (means: string, inS: number, downM: number) => ({
    words: `${means}: ${(depthM + downM).toFixed(1)} m`,
    atS: nowS + inS,
    depthM: depthM + downM,
  });
  return {
    kind: 'ledges',
    ledges: [ledge('fins', 6, 1.2), ledge('jacket', 14, 3.4), ledge('all at once', 5, 0.9), ledge('lead', 130, 13)],
    lost: ['breath: too late', 'nothing: too late'],
  };
}

/** Reach and neutral depths about a depth. */
export function reachAbout(depthM: number): Pick<StageView, 'breathReachM' | 'neutral'> {
  return {
    breathReachM: [depthM - 1.7, depthM + 2.9],
    neutral: [
      { depthM: depthM + 0.3, stable: false },
      { depthM: depthM + 5.2, stable: true },
    ],
  };
}

/** Ledges that stand so close that their words must share a plate. */
export function closeLedges(nowS: number, depthM: number): StageOverlay {
  const ledge = (words: string, inS: number, downM: number) => ({ words, atS: nowS + inS, depthM: depthM + downM });
  return {
    kind: 'ledges',
    ledges: [
      ledge(`breath: ${(depthM + 0.7).toFixed(1)} m`, 6, 0.7),
      ledge(`fins: ${(depthM + 0.65).toFixed(1)} m`, 4, 0.65),
      ledge(`jacket: ${(depthM + 0.6).toFixed(1)} m`, 5, 0.6),
      ledge(`all together: ${(depthM + 0.5).toFixed(1)} m`, 3, 0.5),
    ],
    lost: [],
  };
}
