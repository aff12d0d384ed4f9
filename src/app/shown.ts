import { FLAG, type Moment } from '../dive/index.ts';
import type { StageView } from '../stage/index.ts';
import type { Flight } from './flight.ts';
import type { LessonFlight } from './lesson-flight.ts';
import { pictureBack, pictureOf } from './picture.ts';
import type { Shell } from './shell.ts';

/** What a program has in hand when it draws. */
export interface ShownFrom {
  readonly shell: Shell;
  readonly flight: Flight;
  readonly lesson: LessonFlight | null;
  /** A moment that is looked back at, standing still; null: the flight's own end. */
  readonly lookedBack: Moment | null;
  /** How far the present stands between the last two ticks, 0…1. */
  readonly share: number;
  readonly begun: boolean;
}

/** The frame to draw, and in the debrief also the one at the end of the dive, whose whole line is shown. */
export function shownFrom({ shell, flight, lesson, lookedBack, share, begun }: ShownFrom): {
  readonly now: StageView;
  readonly whole: StageView | null;
  /** Something is asked, or gauges are hidden: nothing may answer it. */
  readonly asked: boolean;
} {
  const { projector, frozen, debrief, place } = shell.view;
  const flown = lesson?.view() ?? null;
  const asked = Boolean((flown ?? shell.view.presenting)?.prompt);
  // What is about to be asked is not answered before.
  const hush = asked || (shell.view.presenting?.hush ?? false);
  // Where a lesson hides gauges the water shows where he is, and nothing that is measured.
  const bare = flown !== null && flown.gauges !== 'all';
  const dive = lookedBack ?? flight.dive;
  const of = {
    dive,
    ...flight.between(share),
    forecastM: hush || bare || flown?.done ? null : flight.forecastM(),
    lesson: flown,
    limitsBefore: lesson?.limitsBefore(),
    goal: lesson?.goal() ?? null,
    frozen: frozen || asked,
    heightPx: shell.root.querySelector('#stage')?.clientHeight ?? 0,
    moments: debrief?.moments ?? [],
    bare: asked || bare,
    afloat: (dive.state.flags & FLAG.headOut) !== 0,
    projector,
    reducedMotion: shell.window.matchMedia('(prefers-reduced-motion: reduce)').matches,
    theme: shell.theme,
    first: !begun && !flown,
  };
  return {
    asked: hush || bare,
    now: lookedBack ? pictureBack({ ...of, depthM: lookedBack.state.depthM }) : pictureOf(of),
    whole:
      place === 'debrief' && debrief ? { ...pictureOf({ ...of, dive: flight.dive }), evidence: debrief.line } : null,
  };
}
