import { html, nothing, type TemplateResult } from 'lit';
import { CAUTION, type LooksView, type Settings } from '../panels/index.ts';
import { coversWater, type PageView } from './page-view.ts';

/** The whole page but the picture: the stage draws into `#stage`, whose content this template never touches. */
export function page(view: PageView): TemplateResult {
  const { settings, readings, projector } = view;
  const inKit = coversWater(view.place);
  const flown = view.place !== 'learn' && !inKit;
  // What a lesson hides is shown in no other way.
  const all = view.gauges === 'all';
  const looking =
    all && view.ready && !view.prompt && (view.place === 'fly' || view.place === 'lesson' || view.place === 'debrief');
  // A dive that was left stands still on the first screen.
  const start = view.place === 'start';
  const stands = start && view.frozen;
  // One card at a time lies on the water: the first caution, then what is to be known, then what is said of a kept dive, then the hill.
  const cautioned = !settings.cautionRead && !projector;
  const note = flown && view.place !== 'debrief' ? (view.kept?.note ?? null) : null;
  const flies = view.place === 'lesson' && !view.prompt;
  return html`<title-bar
      .words=${view.words}
      .progress=${view.progress}
      .frozen=${view.frozen}
      .flying=${view.ready && (view.place === 'fly' || view.place === 'lesson') && !view.prompt}
      .speed=${view.speed}
      .setups=${view.place === 'fly' && !projector ? view.setups : []}
      .setupId=${view.setupId}
      .canGoBack=${view.place === 'fly'}
      .away=${view.ready && !start}
      .canLeave=${view.place === 'lesson' || view.place === 'debrief' || inKit}
      .kit=${projector || !view.ready ? 'none' : view.place === 'start' ? 'always' : view.place === 'fly' ? 'wide' : 'none'}
      .projector=${projector}
      .looks=${looking}
      .menuOpen=${view.looks?.menuOpen ?? false}
      .keys=${settings.keys}
      .oneButton=${settings.oneButton}
    ></title-bar>
    <main class="water">
      <div id="stage" role="img" aria-label="The water: depth downward, time to the right, the diver on the line"></div>
      ${view.ready ? nothing : html`<p class="waiting">Filling the water …</p>`}
      ${start && view.ready && !stands ? html`<p class="afloat-words">You float until you act.</p>` : nothing}
      ${start ? html`<air-words .stands=${stands}></air-words>` : nothing}
      <show-list .cards=${view.presenting?.cards ?? null}></show-list>
      ${view.hint && !projector && !view.prompt && !view.flownBy && !note && !cautioned ? html`<hint-note class="hint" .words=${view.hint}></hint-note>` : nothing}
      ${view.looks && flown && !view.prompt && all ? looks(view.looks, settings, view.traces !== null, !cautioned && !note) : nothing}
      <trace-panel .traces=${flown && !view.prompt && all ? view.traces : null}></trace-panel>
      <kept-note .note=${cautioned || view.trouble ? null : note} .asked=${view.prompt !== null}></kept-note>
      <time-strip .time=${flown && !view.prompt ? view.time : null}></time-strip>
      <problem-list .words=${view.trouble} .problems=${view.problems}></problem-list>
      ${view.prompt && flown ? html`<question-sheet .prompt=${view.prompt} .asking=${view.asking}></question-sheet>` : nothing}
      ${view.place === 'learn' ? html`<lesson-list .lessons=${view.lessons} .learn=${view.learn} .opened=${settings.opened}></lesson-list>` : nothing}
      ${view.debrief && flown ? html`<debrief-sheet .debrief=${view.debrief} .atS=${view.shownAtS}></debrief-sheet>` : nothing}
      ${view.place === 'bench' ? html`<bench-sheet .bench=${view.bench} .keys=${settings.keys}></bench-sheet>` : nothing}
      ${view.place === 'kit' ? html`<kit-sheet .kit=${view.kit} .units=${settings.units}></kit-sheet>` : nothing}
      ${view.looks?.words && flown && !projector && !view.prompt && all ? html`<p class="says">${view.looks.words}</p>` : nothing}
    </main>
    <div class="under">
      <pair-strip .pair=${flown && !view.prompt ? view.pair : null} .units=${settings.units} .keys=${settings.keys}></pair-strip>
      <flown-by
        .pilot=${flies ? view.flownBy : null}
        .takes=${view.time === null}
        .offers=${flies && projector}
      ></flown-by>
      <presenter-strip .strip=${view.presenting?.strip ?? null} .keys=${settings.keys}></presenter-strip>
    </div>
    ${view.captions && flown ? html`<caption-line .captions=${view.captions}></caption-line>` : nothing}
    <aside class="lane" aria-label="Depth, speed and weight">
      <lane-numbers .readings=${flown && !view.elsewhere ? readings : null} .gauges=${view.gauges} .weighed=${view.weighed} .units=${settings.units}></lane-numbers>
      ${flown && !all ? html`<gauges-note .gauges=${view.gauges}></gauges-note>` : nothing}
      ${readings && flown && !projector && all && view.weighed && !view.elsewhere ? html`<gas-bars .gas=${readings.gas} .scaleM3=${readings.gasScaleM3}></gas-bars>` : nothing}
    </aside>
    ${
      flown && view.place !== 'debrief' && !view.flownBy && !stands
        ? html`<practice-deck
            class=${view.prompt ? 'asked' : ''}
            .deck=${view.deck}
            .units=${settings.units}
            .plain=${projector}
            .said=${view.looks?.pulls ?? null}
          ></practice-deck>`
        : nothing
    }
    ${cautioned ? html`<start-note></start-note>` : nothing}
    <footer>
      <span>${CAUTION.model}</span> <span>${CAUTION.lungs}</span> ${view.cautions.map((one) => html`<span>${one}</span> `)}
    </footer>
    <p class="hidden" role="status" aria-live="polite">${view.spoken}</p>
    <more-sheet
      .open=${view.moreOpen}
      .settings=${settings}
      .projector=${projector}
      .breathing=${inKit ? null : view.breathing}
      .deck=${inKit ? null : view.deck}
      .valveHPa=${inKit ? null : view.valveHPa}
      .speed=${view.speed}
      .setups=${view.place === 'start' || view.place === 'fly' ? view.setups : []}
      .setupId=${view.setupId}
      .looks=${view.looks?.choice ?? null}
      .presenting=${view.presenting}
      .kept=${view.kept}
      .pair=${view.place === 'start' || view.place === 'fly' ? view.pair : null}
    ></more-sheet>`;
}

/**
 * What was chosen to look at: the menu, and the hill or every part when the dive stands still.
 * @param free nothing else lies on the water
 */
function looks(
  { choice, menuOpen, hill, parts }: LooksView,
  { units, keys }: Settings,
  traced: boolean,
  free: boolean,
): TemplateResult {
  return html`<look-menu .open=${menuOpen} .choice=${choice} .keys=${keys} .traced=${traced}></look-menu>
    ${hill && free ? html`<hilltop-card .hill=${hill} .units=${units}></hilltop-card>` : nothing}
    ${parts && free ? html`<parts-card .parts=${parts}></parts-card>` : nothing}`;
}
