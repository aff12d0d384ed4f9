import type { Prompt } from '../lesson/index.ts';
import type { StripView } from '../panels/index.ts';
import type { ShowStep } from './demonstration.ts';
import { DEMONSTRATIONS } from './demonstrations.ts';
import type { PageView } from './page-view.ts';
import type { Showing } from './showing.ts';

const COMES: Readonly<Record<ShowStep['kind'], string>> = {
  begin: 'the next diver',
  ask: 'ask',
  run: 'run',
  say: 'explain',
  rewind: 'rewind',
};

/** A class is counted for a choice; anything else is set on the sheet, or passed over. */
const ASKED: Readonly<Record<Prompt['kind'], string>> = {
  explain: 'go on',
  watch: 'go on',
  choice: 'lock and run',
  number: 'run',
  place: 'run',
  curve: 'run',
  order: 'run',
};

/** What of the page says where a class is. */
type Walked = Pick<PageView, 'prompt' | 'frozen' | 'place' | 'learn'> & {
  /** Something of the debrief lies below what is seen. */
  readonly readsOn?: boolean;
};

/** What *next* does now, in words. */
export function nextWords(showing: Showing | null, { prompt, frozen, place, learn, readsOn = false }: Walked): string {
  if (place === 'debrief' && readsOn) return 'read on';
  if (place === 'debrief') return learn?.walk?.next ? learn.walk.next.toLowerCase() : 'lessons';
  if (!showing) {
    if (prompt) return ASKED[prompt.kind];
    return place === 'start' ? 'list' : frozen ? 'go on' : 'freeze';
  }
  if (showing.prompt) return 'lock and run';
  if (showing.runs && !(showing.isLast && frozen)) return frozen ? 'go on' : 'freeze';
  const comes = showing.comes;
  if (comes) return comes.kind === 'rewind' ? `rewind to ${comes.toS} s` : COMES[comes.kind];
  if (learn?.walk) return learn.walk.next.toLowerCase() || 'lessons';
  return DEMONSTRATIONS[DEMONSTRATIONS.indexOf(showing.demonstration) + 1]?.title.toLowerCase() ?? 'list';
}

/** The presenter's strip. */
export function stripOf(
  showing: Showing | null,
  view: Walked,
  tally: readonly number[],
  fullScreen: boolean | null,
): StripView {
  return {
    next: nextWords(showing, view),
    canGoBack: showing ? showing.canGoBack : !view.prompt && (!view.frozen || view.place === 'fly'),
    notes: showing?.step.notes ?? '',
    tally,
    fullScreen,
  };
}
