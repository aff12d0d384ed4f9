/** Afloat upright with so much gas in the jacket, or under water. */
export type LessonStart = { readonly place: 'afloat'; readonly jacketL: number } | StartUnder;

/** At a depth, with a speed (positive down) and an attitude; at rest and level unless said. */
export interface StartUnder {
  readonly place: 'under';
  readonly depthM: number;
  readonly gas: StartGas;
  readonly speedMpmin: number;
  readonly pitchDeg: number;
}

/**
 * Gas in the jacket at that depth: litres; litres more than neutral at mid-breath, below 0 for fewer; or wrong by chance, so many
 * litres more or fewer than neutral.
 */
export type StartGas =
  { readonly jacketL: number } | { readonly offNeutralL: number } | { readonly wrongByL: readonly [number, number] };
