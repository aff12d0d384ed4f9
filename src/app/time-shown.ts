import { TICKS_PER_S, type Dive } from '../dive/index.ts';
import type { TimeView } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import type { Lines } from './lines.ts';
import type { Ghost } from './other-lines.ts';

/** A moment counts as reached from half a tick before it on, seconds. */
const HALF_TICK_S = 0.5 / TICKS_PER_S;

/** The picture with the other lines, the ghost, and the bookmarks of the line that is flown up to the moment that is shown. */
export function withLines(view: StageView, lines: Lines, ghost: Ghost | null): StageView {
  const branches = lines.others
    .filter(({ shown }) => shown)
    .map(({ letter, name, dive: { recording }, knotTick }) => {
      const words = `${letter}: ${name}`;
      return { letter, words, recording, fromS: knotTick / TICKS_PER_S, dashed: false };
    });
  if (ghost?.shown) {
    const { recording } = ghost.dive;
    const fromS = recording.startTick / TICKS_PER_S;
    branches.push({ letter: '', words: `ghost: ${ghost.name}`, recording, fromS, dashed: true });
  }
  const marks = lines.marks.map(({ tick, number, name }) => ({ atS: tick / TICKS_PER_S, number, words: name }));
  const bookmarks = marks.filter(({ atS }) => atS <= view.nowS + HALF_TICK_S);
  return { ...view, branches, bookmarks };
}

/** What the strip shows of a dive, its lines and the moment that is looked at. */
export function timeViewOf(
  { recording, tick: endTick }: Dive,
  lines: Lines,
  page: {
    readonly ghost: Ghost | null;
    readonly tick: number;
    readonly lookedBack: boolean;
    readonly canTakeOver: boolean;
    readonly listOpen: boolean;
    readonly words: string;
  },
): TimeView {
  const { ghost, tick, ...rest } = page;
  const s = (at: number) => at / TICKS_PER_S;
  return {
    ...rest,
    fromS: s(recording.startTick),
    toS: s(endTick),
    atS: s(tick),
    marks: lines.marks.map(({ number, name, tick: at }) => ({ number, name, atS: s(at) })),
    lines: lines.others.map(({ letter, name, knotTick, shown }) => ({ letter, name, shown, knotS: s(knotTick) })),
    ghost: ghost && { name: ghost.name, shown: ghost.shown },
  };
}
