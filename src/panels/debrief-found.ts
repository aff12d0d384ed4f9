import { html, nothing, type TemplateResult } from 'lit';
import type { Habit, LimitInForce, PredictionOutcome } from '../lesson/index.ts';
import type { Moment } from './debrief-marks.ts';
import { unbroken } from './unbroken.ts';

/** Moments of one habit that are gone to, at most. */
const MOST_MOMENTS = 4;

/** Habits, each once with its moments: what may be stated is, with its question; what may only be asked is a question alone. */
export function habitList(habits: readonly Habit[], moment: Moment): TemplateResult | typeof nothing {
  if (habits.length === 0) return nothing;
  const kinds = habits.filter(({ id }, i) => habits.findIndex((one) => one.id === id) === i);
  return html`<h3>Moments to talk about</h3>
    <ul class="habits">
      ${kinds.map((habit) => {
        const times = habits.filter(({ id }) => id === habit.id).slice(0, MOST_MOMENTS);
        return html`<li class="habit">
          <p>${habit.states ? html`<b>${habit.words}.</b> ${habit.question}` : html`<i>A question:</i> ${habit.question}`}</p>
          <div class="see">${times.map(({ fromS }) => moment(fromS))}</div>
        </li>`;
      })}
    </ul>`;
}

/** Predictions beside what the model says, with how far off. */
export function predictionList(predictions: readonly PredictionOutcome[]): TemplateResult | typeof nothing {
  if (predictions.length === 0) return nothing;
  const right = predictions.filter((one) => one.right).length;
  // A class that called nothing out is told what comes, and not that it was wrong.
  const nobody = predictions.every(({ said }) => said === null);
  return html`<h3>${nobody ? 'What was asked' : 'You said, it came'}</h3>
    ${nobody ? nothing : html`<p>${right} of ${predictions.length} as you said.</p>`}
    <ul class="predictions">
      ${predictions.map(
        (one) =>
          html`<li>
            <p class="asked">${unbroken(one.question)}</p>
            <p>
              ${one.said !== null ? html`You said <b>${one.said}</b>; it` : nobody ? 'It' : 'You passed it over; it'} came to
              <b>${unbroken(one.came)}</b>${howFar(one)}
            </p>
            <p class="why">${one.why}</p>
          </li>`,
      )}
    </ul>`;
}

/** ": 2.4 m deeper", ": as you said", ": 0.3 m deeper, near enough (within 0.5 m)". */
export function howFar({ said, right, off, within }: PredictionOutcome): string {
  if (said === null) return '.';
  if (!right) return off ? `: ${off}.` : '.';
  return off ? `: ${off}, near enough${within ? ` (within ${within})` : ''}.` : ': as you said.';
}

/** What the marks ask for, each with its reason. */
export function limitList(limits: readonly LimitInForce[]): TemplateResult | typeof nothing {
  if (limits.length === 0) return nothing;
  return html`<details class="limits">
    <summary>what the marks ask for, and why</summary>
    <ul>
      ${limits.map(
        ({ words, why, changed }) =>
          html`<li>
            <span><b>${words}</b>${changed ? ' (set by this lesson)' : ''}. ${why}</span>
          </li>`,
      )}
    </ul>
  </details>`;
}
