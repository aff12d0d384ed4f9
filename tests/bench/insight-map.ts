import { glide, restingControls, startState, type DiveState } from '../../src/dive/index.ts';
import type { Rig } from '../../src/diver/index.ts';
import { MEANS, USUAL_ASK, placedAcross, recoveryMap, type RecoveryMap } from '../../src/insight/index.ts';
import { carried, fly, type Stepping } from '../insight/full-stepping.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';
import { DRYSUIT, FOAM, LAYERS } from './divers.ts';
import type { Measured } from './measure.ts';

const ROUNDS = 21;
const WARM_UP = 5;
const COLUMNS = 96;
const ROWS = 64;
/** A whole map may take so long, milliseconds: 3 for each of the two ways. */
const MOST_WARM_MS = 6;
const MOST_FIRST_MS = 25;
/** The share of plain stepping that a map may cost: a thirtieth. */
const MOST_SHARE = 0.033;

const PLANES = ['gas', 'lead', 'speed'] as const;
type Across = (typeof PLANES)[number];

interface Mapped {
  readonly name: string;
  readonly rig: Rig;
  readonly state: DiveState;
}

/** Much that shrinks with depth, and lead to spare. */
export const TWO_PIECE = weighed(
  changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never }),
  4,
);

/** Divers whose map is drawn: the first is the one that bounds are for. */
const MAPPED: readonly [Mapped, ...Mapped[]] = [
  { name: '5 mm foam', rig: FOAM.rig, state: FOAM.start },
  {
    name: '7 mm two-piece, 4 kg too much',
    rig: TWO_PIECE,
    state: startState(TWO_PIECE, { depthM: 10, jacketM3: 5e-3, speedMps: 0.2 }),
  },
  { name: 'drysuit', rig: DRYSUIT.rig, state: DRYSUIT.start },
  { name: 'layers', rig: LAYERS.rig, state: LAYERS.start },
];
const CONTROLS = restingControls(320);

function draw({ rig, state }: Mapped, across: Across): RecoveryMap {
  return recoveryMap(rig, state, CONTROLS, USUAL_ASK, { across, columns: COLUMNS });
}

/**
 * Milliseconds of processor time of a whole map, both ways, once warm: the median of 21, in turn over all planes. Processor
 * time, because the clock would measure who else is busy on the machine.
 */
export function warmMaps(): Measured[] {
  const kinds = MAPPED.flatMap((mapped) => PLANES.map((across) => ({ mapped, across, ms: [] as number[] })));
  for (let round = 0; round < WARM_UP + ROUNDS; round++)
    for (const { mapped, across, ms } of kinds) {
      const from = process.cpuUsage();
      draw(mapped, across);
      const { user, system } = process.cpuUsage(from);
      if (round >= WARM_UP) ms.push((user + system) * 1e-3);
    }
  return kinds.map(({ mapped, across, ms }) => {
    ms.sort((a, b) => a - b);
    return {
      name: `ms of a recovery map of ${COLUMNS} columns, both ways, warm: ${mapped.name}, depth × ${across}`,
      value: ms[10]!,
      most: MOST_WARM_MS,
      spread: [ms[5]!, ms[15]!],
    };
  });
}

/** Milliseconds of the first map of a fresh process. */
export function firstMap(): Measured {
  const from = performance.now();
  draw(MAPPED[0], 'gas');
  return {
    name: 'ms of the first recovery map of a fresh process, depth × gas',
    value: performance.now() - from,
    most: MOST_FIRST_MS,
  };
}

/** The least of several measurements of the same thing, with their quartiles: whatever else the machine does can only add. */
export function leastOf(rows: readonly Measured[]): Measured {
  const sorted = [...rows].sort((a, b) => a.value - b.value);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return { ...at(0), spread: [at(0.25).value, at(0.75).value] };
}

const COARSE: Stepping = { ticks: 12, move: (rig, s, c, ticks) => glide(rig, s, c, ticks, 12) };

/**
 * The cost of a map as a share of stepping each of its cells plainly at 0.1 s, every means both ways. Rounds of a map and of
 * a 64th of the cells in turn, so that both see the same machine; the cells of a round lie spread over the plane.
 */
export function mapShare(): Measured {
  const mapped = MAPPED[0];
  const map = draw(mapped, 'gas');
  for (let i = 0; i < 10; i++) draw(mapped, 'gas');
  stepCells(mapped, map, 0);
  let mapMs = 0;
  let stepMs = 0;
  const shares: number[] = [];
  for (let round = 0; round < ROWS; round++) {
    const from = performance.now();
    draw(mapped, 'gas');
    const drawn = performance.now();
    stepCells(mapped, map, round);
    const stepped = performance.now();
    mapMs += drawn - from;
    stepMs += stepped - drawn;
    shares.push((drawn - from) / (stepped - drawn) / ROWS);
  }
  shares.sort((a, b) => a - b);
  return {
    name: `a recovery map of ${COLUMNS} columns ÷ ${COLUMNS} × ${ROWS} cells × every means, both ways, stepped plainly at 0.1 s`,
    value: mapMs / ROWS / stepMs,
    most: MOST_SHARE,
    spread: [shares[16]!, shares[48]!],
    note: `${(mapMs / ROWS).toFixed(1)} ms ÷ ${stepMs.toFixed(0)} ms`,
  };
}

/** Steps one cell of every column, each at another depth from round to round, until every cell has had its turn. */
function stepCells({ rig, state }: Mapped, map: RecoveryMap, round: number): void {
  if (map.across.kind !== 'gas') throw new TypeError('stepCells: a map of gas is wanted');
  for (let column = 0; column < COLUMNS; column++) {
    const row = (round + column * 7) % ROWS;
    const depthM = map.topM + ((map.bottomM - map.topM) * (row + 0.5)) / ROWS;
    const placed = placedAcross(rig, state, 'gas', map.across.of, map.across.values[column]!);
    const from = carried(rig, placed.state, depthM);
    for (const means of MEANS)
      for (const way of [1, -1] as const)
        if (means !== 'lead' || way > 0) fly(rig, from, CONTROLS, USUAL_ASK, means, way, COARSE);
  }
}
