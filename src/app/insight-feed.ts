import type { DiveState } from '../dive/index.ts';
import {
  fetchLooks,
  type HillView,
  type LookChoice,
  type LooksView,
  type PartRow,
  type Pulls,
  type Wish,
} from '../panels/index.ts';
import { lookedAt, type Stage, type StageView } from '../stage/index.ts';
import { placeHill } from './hill-place.ts';
import { withNumbersOf } from './look-bars.ts';
import { askOf } from './look-data.ts';
import { rememberLooks, rememberedLooks } from './look-memory.ts';
import { lookAt, type LookWords, type Looked, type InHand } from './look-reckon.ts';
import './looks.css';
import { LookDesk } from './look-desk.ts';
import type { LookAnswer, LookRequest, StopsAnswer } from './look-work.ts';
import { shelfOf } from './remembered.ts';
import type { Shell } from './shell.ts';

/** How much of the dive's time passes between two reckonings, and between two sentences, seconds. */
const FRESH_S = 0.1;
const SENTENCE_S = 0.5;
/** How much between two maps. */
const MAP_S = 0.3;
/** Water shown with a look that reaches deep, with one that reads by the metre, and beyond the bottom, metres. */
const MAP_SHOWN_M = 20;
const DEEP_SHOWN_M = 16;
const NEAR_SHOWN_M = 9;
const AROUND_M = 2.2;

/**
 * What the model says about the moment, fed to picture and panels: ten times a second of the dive, and whenever something was
 * chosen. The recovery map is reckoned beside the page. Nothing is said while something is asked.
 */
export class InsightFeed {
  readonly #shell: Shell;
  readonly #words: LookWords;
  readonly #changed: () => void;
  readonly #desk: LookDesk;
  #choice: LookChoice;
  #menuOpen = false;
  #added: Looked['added'] = {};
  #sentence = '';
  #hill: HillView | null = null;
  #parts: readonly PartRow[] | null = null;
  #reckoned = false;
  /** The bars of the moment that the sentence is about. */
  #spoken: NonNullable<StageView['overlay']> | null = null;
  #pulls: Pulls | null = null;
  #inHand: InHand | null = null;
  #fresh = '';
  #freshS = NaN;
  #askedKey = '';
  #askedRig: StageView['rig'] | null = null;
  #askedS = NaN;
  /** The last look could not be reckoned: none is asked for until somebody chooses anew. */
  #failing = false;
  #sentenceS = NaN;
  #state: Readonly<DiveState> | null = null;
  #rig: StageView['rig'] | null = null;
  #frozen = false;

  private constructor(shell: Shell, words: LookWords, changed: () => void) {
    this.#shell = shell;
    this.#words = words;
    this.#changed = changed;
    this.#choice = rememberedLooks(shelfOf(shell.window), words.USUAL_LOOKS);
    this.#desk = new LookDesk(
      () => new Worker(new URL('./look-worker.ts', import.meta.url), { type: 'module' }),
      (answer, request) => this.#came(answer, request),
      () => this.#failed(),
    );
    this.#tell();
  }

  /** The feed with its panels fetched. @param changed called when the picture has to be drawn anew */
  static async begin(shell: Shell, changed: () => void): Promise<InsightFeed> {
    return new InsightFeed(shell, await fetchLooks(), changed);
  }

  /** Grants what is asked of the looks. */
  hear(wish: Extract<Wish, { kind: 'look' | 'look-choice' | 'look-menu' }>): void {
    if (wish.kind === 'look-menu') this.#menuOpen = wish.open;
    else {
      this.#failing = false;
      const choice =
        wish.kind === 'look' ? this.#words.toggled(this.#choice, wish.look) : { ...this.#choice, ...wish.choice };
      if (choice.across !== this.#choice.across || choice.look !== this.#choice.look) this.#inHand = null;
      this.#choice = choice;
      this.#menuOpen = false;
      rememberLooks(shelfOf(this.#shell.window), choice);
    }
    this.#renew();
  }

  /** Whether the picture last asked for had to be reckoned anew. */
  get reckoned(): boolean {
    return this.#reckoned;
  }

  /** The picture with what was chosen to be seen in it. @param asked a question stands: nothing is said */
  onto(shown: StageView, asked: boolean): StageView {
    this.#reckoned = false;
    const view = withoutHidden(shown, this.#choice);
    const { place, projector } = this.#shell.view;
    const flown = place === 'fly' || place === 'lesson' || place === 'debrief';
    const { reach, look, across } = this.#choice;
    // A map of speeds lies near the ground alone.
    const whole = this.#choice.whole || (look === 'map' && across === 'speed');
    if (!flown || asked || (place === 'debrief' && !view.frozen) || (!reach && !look && !whole)) {
      this.#say('', null, null, null);
      return asked ? shown : view;
    }
    const about = lookedAt(view);
    this.#refresh(about);
    const shownM = whole
      ? about.rig.bottomM + AROUND_M
      : look === 'map'
        ? MAP_SHOWN_M
        : look === 'stops'
          ? DEEP_SHOWN_M
          : look && look !== 'volumes' && look !== 'ledger'
            ? NEAR_SHOWN_M
            : 0;
    const { breathReachM, ...rest } = this.#added;
    // Two looks at once are too many for a class.
    const alone = projector && look !== null;
    return {
      ...view,
      ...rest,
      ...(alone ? {} : { breathReachM: breathReachM ?? null }),
      metresShown: Math.max(view.metresShown, shownM),
    };
  }

  /** The picture was drawn: the hill lies where the line is not. */
  drawn(stage: Pick<Stage, 'depthToY' | 'secondsToX'>, { recording, nowS, coveredPx = 0 }: StageView): void {
    if (this.#hill) placeHill(this.#shell.root, stage, recording, nowS, coveredPx);
  }

  /** Reckons anew where a tenth of a second has passed, or anything else is not as it was. */
  #refresh(view: StageView): void {
    const { frozen } = view;
    const { units } = this.#shell.view.settings;
    // Controls change all the time while somebody flies, and count as often as time does.
    const fresh = JSON.stringify([this.#choice, units, frozen, frozen ? view.controls : 0]);
    const past = Math.abs(view.nowS - this.#freshS);
    if (fresh === this.#fresh && (frozen ? past === 0 : past < FRESH_S) && view.state === this.#state) return;
    const cut = fresh !== this.#fresh || past > 1 || frozen || view.state !== this.#state;
    this.#fresh = fresh;
    this.#freshS = view.nowS;
    this.#state = view.state;
    if (view.rig !== this.#rig) this.#inHand = null;
    this.#rig = view.rig;
    this.#frozen = frozen;
    this.#reckon(view, cut || !(Math.abs(view.nowS - this.#sentenceS) < SENTENCE_S));
  }

  #reckon(view: StageView, speak: boolean): void {
    this.#reckoned = true;
    const { rig, state, controls } = view;
    const wanted = this.#wanted();
    if (wanted)
      this.#askBeside(view.frozen, { rig, state, controls, ask: askOf(this.#choice), nowS: view.nowS, wanted });
    const { units } = this.#shell.view.settings;
    const { added, sentence, hill, pulls, parts } = lookAt(view, this.#choice, this.#inHand, this.#words, units);
    if (speak) this.#spoken = added.overlay ?? null;
    const { overlay } = added;
    this.#added = overlay && this.#spoken ? { ...added, overlay: withNumbersOf(overlay, this.#spoken) } : added;
    if (speak) this.#sentenceS = view.nowS;
    // That of the stopping forecast keeps its time by itself, with the numbers on the ledges.
    const said = sentence && view.second?.looked ? `2: ${sentence}` : sentence;
    this.#say(speak || wanted === 'stops' ? said : this.#sentence, hill, speak ? pulls : this.#pulls, parts);
  }

  /** What of the choice is reckoned beside the page. */
  #wanted(): LookRequest['wanted'] | null {
    const { look, across } = this.#choice;
    return look === 'stops' ? 'stops' : look === 'map' ? across : null;
  }

  /** Asks for a look unless it would be the one that was asked for last. */
  #askBeside(frozen: boolean, request: LookRequest): void {
    if (this.#failing) return;
    const { rig, ask, wanted, nowS, controls } = request;
    const key = JSON.stringify([ask, wanted, frozen ? [nowS, controls] : 0]);
    const soon = wanted === 'stops' ? FRESH_S : MAP_S;
    if (key === this.#askedKey && rig === this.#askedRig && Math.abs(nowS - this.#askedS) < soon) return;
    this.#askedKey = key;
    this.#askedRig = rig;
    this.#askedS = nowS;
    this.#desk.ask(request);
  }

  /** Said once, and not again with every moment of a dive. */
  #failed(): void {
    this.#failing = true;
    this.#askedKey = '';
    const trouble = 'This look could not be reckoned. Everything else goes on; choose the look again to try once more.';
    this.#shell.show({ trouble });
  }

  /** A look came: shown at once, its sentence in its time. One that is no longer wanted is dropped. */
  #came(answer: LookAnswer, { rig, wanted }: LookRequest): void {
    if (wanted !== this.#wanted() || rig !== this.#rig) return;
    const first = this.#inHand === null;
    if (answer.kind === 'stops') this.#inHand = { answer, said: this.#saidWith(answer) };
    else {
      const here = { ...answer.map.here };
      this.#inHand = { answer: { ...answer, map: { ...answer.map, here } }, here };
    }
    if (first) return this.#renew();
    this.#freshS = NaN;
    this.#changed();
  }

  /** The forecast that is spoken of: the one before until its time is over, unless another means stops him now. */
  #saidWith(answer: StopsAnswer): StopsAnswer {
    const said = this.#inHand && 'said' in this.#inHand ? this.#inHand.said : null;
    const pastS = answer.nowS - (said?.nowS ?? NaN);
    const keeps = !this.#frozen && pastS > 0 && pastS < SENTENCE_S;
    return said && keeps && fatesOf(said) === fatesOf(answer) ? said : answer;
  }

  #renew(): void {
    this.#fresh = '';
    this.#changed();
    this.#tell();
  }

  #say(sentence: string, hill: HillView | null, pulls: Pulls | null, parts: readonly PartRow[] | null): void {
    if (sentence === this.#sentence && hill === this.#hill && pulls === this.#pulls && parts === this.#parts) return;
    this.#sentence = sentence;
    this.#hill = hill;
    this.#pulls = pulls;
    this.#parts = parts;
    this.#tell();
    // The card is there after this frame: once more, to lay it where the line is not.
    if (hill) queueMicrotask(this.#changed);
  }

  #tell(): void {
    const looks: LooksView = {
      choice: this.#choice,
      menuOpen: this.#menuOpen,
      words: this.#sentence,
      hill: this.#hill,
      pulls: this.#pulls,
      parts: this.#parts,
    };
    this.#shell.show({ looks });
  }
}

/** The picture without what was hidden of all that stands in the water by itself. */
function withoutHidden(view: StageView, { bands, ahead }: LookChoice): StageView {
  const none = { bands: [], limits: { upMps: null, downMps: null }, limitsBefore: [], limitTaught: false };
  return { ...view, ...(bands ? {} : none), ...(ahead ? {} : { forecastM: null }) };
}

/** Which way he goes, and which means stop him. */
function fatesOf({ forecast: { way, rows } }: StopsAnswer): string {
  return `${way} ${rows
    .filter(({ stops }) => stops)
    .map(({ means }) => means)
    .join(' ')}`;
}
