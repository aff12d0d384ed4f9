import type { Rig } from '../diver/index.ts';
import type { Moment } from '../dive/index.ts';
import type { AskedAbout, LessonView, Prompt } from '../lesson/index.ts';
import { CAUTION, spoken, type Act } from '../panels/index.ts';
import { STANDARD_GRAVITY_MPS2, STANDARD_PRESSURE_PA } from '../water/index.ts';
import { deckOf } from './deck-of.ts';
import { valveHPa } from './hands.ts';
import type { Flight } from './flight.ts';
import type { PageView } from './page-view.ts';
import { practiceWords } from './practice-words.ts';
import { readingsOf } from './readings-of.ts';

/** What the panels are told from. */
export interface ToldFrom {
  readonly view: PageView;
  readonly flight: Flight;
  /** The dive that is looked at: the flight's, at its end or at an earlier moment. */
  readonly dive: Moment;
  readonly lesson: LessonView | null;
  /** The lesson's own title; empty without one. */
  readonly name: string;
  readonly held: ReadonlySet<Act>;
  readonly armed: boolean;
  readonly begun: boolean;
  /** Free practice that began by letting the diver go. */
  readonly letGo: boolean;
  /** Whether it is time to say the moment aloud again. */
  readonly speak: boolean;
}

/** The part of the page that follows from the dive: readings, deck, words, question. */
export function toldOf({
  view,
  flight,
  dive,
  lesson,
  name,
  held,
  armed,
  begun,
  letGo,
  speak,
}: ToldFrom): Partial<PageView> {
  const { rig, hands } = flight;
  const { toggles, units, keys } = view.settings;
  // Among the lessons the dive in hand is not seen, and nothing is said of it.
  const among = view.place === 'learn';
  const flown = among ? null : lesson;
  const gauges = lesson?.gauges ?? 'all';
  const prompt = (lesson ?? view.presenting)?.prompt ?? null;
  // A lesson asks about a diver as its words have him, not as he hangs here: what this one weighs would answer or mislead.
  const weighed = !lesson || prompt === null || prompt.kind === 'explain' || prompt.kind === 'watch';
  const elsewhere = prompt !== null && isElsewhere(prompt, lesson?.about ?? null, dive.state);
  const told = view.flownBy === 'script' && flight.dive.controls.breath !== 0;
  const readings = readingsOf(rig, dive.state, hands.breathing === 'automatic' && !told ? hands.levelCl * 1e-5 : null);
  return {
    readings,
    gauges,
    weighed,
    elsewhere,
    deck: deckOf(flight, {
      ledger: gauges === 'all',
      byHand: lesson?.byHand ?? false,
      wanted: lesson?.hands ?? [],
      first: view.place === 'start',
      down: held,
      armed,
      toggles,
      keys,
      readings,
    }),
    // A class gets one sentence: in free practice that of the look, in a lesson the task, which waits until nothing is asked.
    words:
      (view.projector && prompt ? flown && name : flown?.title) ??
      (among
        ? 'Lessons'
        : view.presenting?.words ||
          (view.projector && view.looks?.words) ||
          wordsOf(view.place, begun, letGo, () =>
            practiceWords(readings.place, flight.dive.recording, dive.state.tick),
          )),
    progress: flown?.progress ?? '',
    hint: flown && !flown.done ? flown.hint : '',
    prompt,
    asking: lesson?.asking ?? null,
    breathing: rig.lungs.open ? hands.breathing : null,
    valveHPa: rig.drysuit ? valveHPa(hands, rig) : null,
    cautions: cautionsOf(rig),
    ...(speak
      ? {
          spoken: [
            elsewhere ? '' : spoken(readings, units, gauges, weighed),
            view.pair?.sentence ?? '',
            view.looks?.words ?? '',
          ]
            .filter(Boolean)
            .join('. '),
        }
      : {}),
  };
}

/** So far from what is asked, metres and m/min, the diver who hangs there is another. */
const OTHER_M = 0.15;
const OTHER_MPMIN = 0.5;

/**
 * Whether what is asked, or was watched, is another moment than the one that hangs in the water: its numbers would contradict the
 * words. A question with a speed describes a moment; one with a depth alone asks about a place, and the dive stays to be read.
 */
export function isElsewhere(
  prompt: Prompt,
  about: AskedAbout | null,
  { depthM, speedMps }: { readonly depthM: number; readonly speedMps: number },
): boolean {
  const { atM = null, speedMpmin = null } = about ?? {};
  return (
    prompt.kind === 'watch' ||
    (speedMpmin !== null &&
      (Math.abs(speedMpmin - speedMps * 60) > OTHER_MPMIN || (atM !== null && Math.abs(atM - depthM) > OTHER_M)))
  );
}

/** What a diver and his water add to the footer. Earth's usual gravity and sea-level pressure: what differs clearly is another world. */
export function cautionsOf({ column, loop }: Rig): readonly string[] {
  const elsewhere =
    Math.abs(column.gravityMps2 - STANDARD_GRAVITY_MPS2) > 0.1 ||
    Math.abs(column.surfacePressurePa - STANDARD_PRESSURE_PA) > 3000;
  return [...(elsewhere ? [CAUTION.worlds] : []), ...(loop ? [CAUTION.loop] : [])];
}

function wordsOf(place: PageView['place'], begun: boolean, letGo: boolean, practice: () => string): string {
  if (place === 'start' && begun) return 'Your dive stands still.';
  if (letGo) return 'Let go: what still stops you, and until when?';
  return begun ? practice() : 'Let gas out and breathe out. What happens?';
}
