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

/** What a class is asked is locked, and the lesson goes on: to the next question, or to the run. */
const LOCK = 'lock, go on';

/** What whoever stands in front does with a question: letters are counted, anything else is called out and set on the sheet. */
const HOW: Readonly<Record<Prompt['kind'], string>> = {
  explain: '',
  watch: '',
  choice: 'Hands up for each letter, then count.',
  number: 'Let them call out numbers; set the one that most would say.',
  place: 'Let them call out depths; set the one that most would say.',
  curve: 'Let them call out each number, and set it.',
  order: 'Let them call out the order, and set it.',
};

/** What of the page says where a class is. */
type Walked = Pick<PageView, 'prompt' | 'frozen' | 'place' | 'learn'> &
  Partial<Pick<PageView, 'hint' | 'bench'>> & {
    /** Something of the debrief lies below what is seen. */
    readonly readsOn?: boolean;
  };

/** What is asked where the class is: of the dive, or at the bench. */
export function askedOf({ prompt, place, bench }: Pick<PageView, 'prompt' | 'place' | 'bench'>): Prompt | null {
  return place === 'bench' ? (bench?.prompt ?? null) : prompt;
}

/** What *next* does now, in words. */
export function nextWords(showing: Showing | null, view: Walked): string {
  const { prompt, frozen, place, learn, bench, readsOn = false } = view;
  const after = learn?.walk ? learn.walk.next.toLowerCase() || 'lessons' : 'lessons';
  if (place === 'bench') return atBench(bench?.prompt ?? null, bench?.lesson ?? null, readsOn, after);
  if (place === 'debrief') return readsOn ? 'read on' : after;
  if (!showing) {
    if (prompt) return isRead(prompt) ? 'go on' : LOCK;
    return place === 'start' ? 'list' : frozen ? 'go on' : 'freeze';
  }
  if (showing.prompt) return 'lock and run';
  if (showing.runs && !(showing.isLast && frozen)) return frozen ? 'go on' : 'freeze';
  const comes = showing.comes;
  if (comes) return comes.kind === 'rewind' ? `rewind to ${comes.toS} s` : COMES[comes.kind];
  if (learn?.walk) return after;
  return DEMONSTRATIONS[DEMONSTRATIONS.indexOf(showing.demonstration) + 1]?.title.toLowerCase() ?? 'list';
}

function atBench(
  prompt: Prompt | null,
  lesson: NonNullable<PageView['bench']>['lesson'],
  readsOn: boolean,
  after: string,
): string {
  if (prompt) return isRead(prompt) ? 'go on' : LOCK;
  if (lesson?.came) return readsOn ? 'read on' : after;
  return lesson?.trying?.shown ? 'go on without' : 'show it';
}

const isRead = ({ kind }: Prompt) => kind === 'explain' || kind === 'watch';

/** What may be said now: of a demonstration its own words, of a question how a class answers it, of a flight the lesson's hint. */
function notesOf(showing: Showing | null, view: Walked, asked: Prompt | null): string {
  if (showing) return showing.step.notes;
  if (asked) return HOW[asked.kind];
  return view.place === 'lesson' ? (view.hint ?? '') : '';
}

/** The presenter's strip. */
export function stripOf(
  showing: Showing | null,
  view: Walked & Pick<PageView, 'bench'>,
  tally: readonly number[],
  fullScreen: boolean | null,
): StripView {
  const asked = showing?.prompt ?? askedOf(view);
  const read = view.place === 'debrief' || (view.place === 'bench' && Boolean(view.bench?.lesson?.came));
  return {
    next: nextWords(showing, view),
    canGoBack: showing
      ? showing.canGoBack
      : read || (view.place !== 'bench' && !asked && (!view.frozen || view.place === 'fly')),
    notes: notesOf(showing, view, asked),
    tally: asked?.kind === 'choice' ? tally.slice(0, asked.options.length) : [],
    lists: view.place === 'fly',
    fullScreen,
  };
}
