import type { DeepView, TankView } from '../bench/index.ts';

/** What the bench shows. */
export interface BenchView {
  readonly sentence: string;
  readonly tank: TankView | null;
  readonly deep: DeepView | null;
}
