import bottleDiver from '../../lessons/bench/bottle-diver.yaml';
import fiveStones from '../../lessons/bench/five-stones.yaml';
import lumpAndTray from '../../lessons/bench/lump-and-tray.yaml';
import rigidAndFlexible from '../../lessons/bench/rigid-and-flexible.yaml';
import twoWaters from '../../lessons/bench/two-waters.yaml';
import weighingInWater from '../../lessons/bench/weighing-in-water.yaml';
import type { BenchLesson } from './bench-lesson.ts';

/** Our own lessons at the bench, in the order of the menu. */
export const BENCH_LESSONS = [
  lumpAndTray,
  fiveStones,
  weighingInWater,
  twoWaters,
  rigidAndFlexible,
  bottleDiver,
] as readonly BenchLesson[];
