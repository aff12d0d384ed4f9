/** What the hands, the lungs and the fins do: gas in (1) or out (−1), litres off mid-breath, thrust upward in newtons. */
export interface Act {
  readonly gas: -1 | 0 | 1;
  readonly biasL: number;
  readonly finsUpN: number;
  readonly holdsLine?: boolean;
  /** Pieces of lead let go, a bit each. */
  readonly releaseMask?: number;
}
