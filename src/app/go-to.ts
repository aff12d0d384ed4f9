import type { Dives } from './dives.ts';
import type { Shell } from './shell.ts';

/** Takes up the dive of a place where something is flown or was: the column, or the debrief of a lesson that was flown to its end. */
export function goTo(place: 'column' | 'fly' | 'teach' | 'debrief', dives: Dives, shell: Shell): void {
  if (place === 'debrief') {
    if (!dives.takeUp((lesson) => lesson?.view().done ?? false)) dives.toColumn();
    return;
  }
  dives.toColumn();
  shell.show({ place: 'fly', projector: place === 'teach' || (place === 'column' && shell.view.projector) });
}
