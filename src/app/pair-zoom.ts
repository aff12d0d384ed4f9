/** Water that a picture of two divers shows, metres: steps, so that the zoom rests between them. */
const STEPS_M = [7, 9.5, 13, 17];
/** Room above and below both, metres. */
const ROOM_M = 3.2;
/** Below this share of what is shown the picture comes closer again. */
const CLOSER = 0.55;

/** The least step that has room for two divers so far apart; the one before as long as it fits, and the last where none does. */
export function shownFor(apartM: number, beforeM: number): number {
  const wantedM = apartM + ROOM_M;
  const fits = (stepM: number) => wantedM <= stepM;
  if (beforeM > 0 && fits(beforeM) && wantedM > beforeM * CLOSER) return beforeM;
  return STEPS_M.find(fits) ?? STEPS_M.at(-1)!;
}
