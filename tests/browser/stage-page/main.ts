import '@fontsource-variable/figtree/wght.css';
import './page.css';
import { TICKS_PER_S } from '../../../src/dive/index.ts';
import { LessonFlight } from '../../../src/app/lesson-flight.ts';
import { readySetup } from '../../../src/app/setups.ts';
import { rigOf } from '../../../src/diver/index.ts';
import { Forecast } from '../../../src/insight/index.ts';
import { LESSONS, flyLesson, lessonSetup } from '../../../src/lesson/index.ts';
import type { PilotName } from '../../../src/pilot/index.ts';
import {
  Stage,
  drawRunSheet,
  type BranchLine,
  type SecondView,
  type StageOptions,
  type StageView,
} from '../../../src/stage/index.ts';
import { ScriptedDive } from './dives.ts';

const host = document.getElementById('host')!;

/** The view of a scripted dive as it stands, with what a test wants otherwise. */
function viewOf({ dive }: ScriptedDive, wish: Partial<StageView> = {}): StageView {
  return {
    rig: dive.rig,
    state: dive.state,
    depthM: dive.state.depthM,
    nowS: dive.tick / TICKS_PER_S,
    controls: dive.controls,
    recording: dive.recording,
    changes: dive.changes,
    events: dive.events,
    forecastM: new Forecast(dive.rig).depthsM(dive.state, dive.controls),
    bands: [],
    rings: [],
    limits: { upMps: 9 / 60, downMps: 18 / 60 },
    limitTaught: false,
    frozen: false,
    metresShown: 6,
    forceArrow: true,
    projector: false,
    reducedMotion: false,
    theme: 'light',
    ...wish,
  };
}

/** Dives a script for some seconds, to the nearest twentieth. */
function dived(script: string, seconds: number): ScriptedDive {
  const scripted = new ScriptedDive(script);
  scripted.advance(Math.round((seconds * TICKS_PER_S) / 6) * 6);
  return scripted;
}

/** Another dive, as long as the one that is shown, and how it is drawn beside it. */
export interface Beside {
  readonly script: string;
  readonly as: 'branch' | 'ghost' | 'second';
}

/** Other dives as a view takes them. */
function besides(seconds: number, all: readonly Beside[]): Partial<StageView> {
  const branches: BranchLine[] = [];
  let second: SecondView | undefined;
  for (const { script, as } of all) {
    const { rig, state, controls, recording } = dived(script, seconds).dive;
    const words = `like ${script}`;
    if (as === 'second') second = { rig, state, depthM: state.depthM, controls, recording, words, looked: false };
    else branches.push({ recording, fromS: 0, letter: 'A', words, dashed: as === 'ghost' });
  }
  return { branches, ...(second && { second }) };
}

/** What the tests drive, from outside. */
const harness = {
  stage: undefined as Stage | undefined,
  scripted: undefined as ScriptedDive | undefined,
  async open(options: StageOptions = {}) {
    this.stage?.destroy();
    this.stage = await Stage.create(host, options);
    this.stage.resize(host.clientWidth, host.clientHeight, devicePixelRatio);
  },
  /** Dives a script for some seconds and draws its end; done once all of it has been fetched. */
  show(
    script: string,
    seconds: number,
    wish: Partial<StageView> = {},
    beside: readonly Beside[] = [],
  ): Promise<unknown> {
    this.scripted = dived(script, seconds);
    this.stage!.draw(viewOf(this.scripted, { ...besides(seconds, beside), ...wish }));
    return this.stage!.whole;
  },
  /** The whole line of a lesson that a simulated diver flew, with what its marks found, in place of the stage. */
  async sheet(id: string, pilot: PilotName, wish: Partial<StageView>, textPx: number): Promise<void> {
    const lesson = LESSONS.find((one) => one.id === id)!;
    const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
    const flown = LessonFlight.resumed(lesson, flyLesson(lesson, rig, pilot, 1).dive.run(), []);
    while (flown.view().prompt) flown.answer(null);
    const { line, moments } = flown.debrief();
    const { recording, changes, events } = flown.flight.dive;
    const { bands, limits } = flown.view();
    const rings = moments.map((atS, i) => ({ atS, number: i + 1 }));
    const of = { recording, changes, events, bands, limits, limitsBefore: flown.limitsBefore(), rings, evidence: line };
    const canvas = document.createElement('canvas');
    host.replaceChildren(canvas);
    const rowPx = (150 * textPx) / 16;
    const options = { widthPx: host.clientWidth, rowPx, pixelRatio: devicePixelRatio, textPx };
    drawRunSheet(canvas, viewOf(dived('hover', 0.1), { ...of, ...wish }), options);
  },
  /** Draws the same moment once more. */
  again(wish: Partial<StageView> = {}) {
    this.stage!.draw(viewOf(this.scripted!, wish));
  },
  /** Goes on, a frame for each six ticks; returns the milliseconds that each frame took to compose and to render. */
  fly(frames: number, wish: Partial<StageView> = {}): { composedMs: number; renderedMs: number }[] {
    return Array.from({ length: frames }, () => {
      this.scripted!.advance(6);
      this.stage!.draw(viewOf(this.scripted!, wish));
      return this.stage!.cost;
    });
  },
};

export type Harness = typeof harness;
Object.assign(globalThis, { harness });
