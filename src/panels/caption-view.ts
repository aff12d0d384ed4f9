/** What sounds now, in words; empty where nothing does. */
export interface CaptionView {
  readonly breath: string;
  /** Gas that passes or has just passed, with its seconds. */
  readonly gas: readonly string[];
  /** Those of them that are over. */
  readonly over: readonly string[];
  readonly tone: string;
}
