import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { gapWords, offWords, outsideWords, taskWords, toldGaps, type LineEvidence } from '../lesson/index.ts';
import { amount, pointsScale, type Moment } from './debrief-marks.ts';
import type { Debrief } from './debrief-view.ts';
import { unbroken } from './look-words.ts';
import { timeText } from './units.ts';

/** The whole line with what marks found on it, and the same in words: what each sign on it means, how much it is, where. */
export function lineFigure({ line, result }: Debrief, moment: Moment): TemplateResult {
  return html`<figure class="whole-run">
    <canvas role="img" aria-label="The whole line of the dive" aria-describedby="line-says"></canvas>
    <figcaption id="line-says">
      <p>${tasksSentence(line, result.marks.length > 0)}</p>
      <ul class="signs">
        ${signsOf(line).map(
          ({ sign, says, atS }) =>
            html`<li>
              <svg viewBox="0 0 36 20" aria-hidden="true">${sign}</svg><span>${unbroken(says)}</span>
              ${moment(atS)}
            </li>`,
        )}
      </ul>
    </figcaption>
  </figure>`;
}

function tasksSentence({ tasks }: LineEvidence, marked: boolean): string {
  const each = tasks
    .map((task) => `${taskWords(task)}${task.word === null ? ': not marked' : ''} (from ${timeText(task.fromS)})`)
    .join(', ');
  return marked
    ? `Brackets above the line: the tasks, and how this flight of each was. ${each}.`
    : `Brackets above the line: the tasks; no mark looks at them. ${tasks.map(({ title, fromS }) => `${title} (from ${timeText(fromS)})`).join(', ')}.`;
}

interface Sign {
  readonly sign: SVGTemplateResult;
  readonly says: string;
  readonly atS: number | null;
}

/** The signs that stand on this line. */
function signsOf({ gaps, holds, fins, presses }: LineEvidence): Sign[] {
  const told = toldGaps(gaps);
  const signs: Sign[] = told.map((gap, i) => ({
    sign: GAP,
    says: `${sentence(gapWords(gap))} for ${amount(gap.mpmin, 'm/min')}${i === 0 ? '; dashed: the steepest line allowed' : ''}.`,
    atS: gap.toS,
  }));
  if (gaps.length > 0) signs.push({ sign: TWO, says: 'Two strokes side by side: too fast there.', atS: null });
  for (const held of holds) {
    const { atM, bandM, out } = held;
    const place = `${amount(atM - bandM, '')} to ${amount(atM + bandM, 'm')}`;
    signs.push({
      sign: SPREAD,
      says: `${sentence(offWords(held))} the ${amount(atM, 'm')} asked for: that far from it lie the thin lines.`,
      atS: null,
    });
    const outside = outsideWords(held);
    if (outside)
      signs.push({ sign: HOLLOW, says: `${outside} ${place}: there the line is hollow.`, atS: out[0]?.fromS ?? null });
  }
  if (presses > 0) {
    const says = `Gas let in above the line, gas let out below it, as high as the litres: ${presses === 1 ? 'one press' : `${presses} presses`}.`;
    signs.push({ sign: GAS, says, atS: null });
  }
  const thrusts = fins.flatMap(({ upN }) => upN);
  if (thrusts.length > 0) {
    const most = Math.max(...thrusts.map(Math.abs));
    const sumNs = thrusts.reduce((sum, thrustN) => sum + Math.abs(thrustN), 0) / 10;
    const says = `Fins, up and down, at the foot: ${amount(sumNs, 'N s')} in all, ${amount(most, 'N')} at most.`;
    signs.push({ sign: FINS, says, atS: null });
  }
  return signs;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const GAP = svg`<path class="dash" d="M2 4 L22 12" /><path d="M2 4 L10 8 L22 18 M24 12 H29 V18 H24" />`;
const TWO = svg`<path d="M3 4 L31 12 M3 9 L31 17" />`;
const SPREAD = svg`<path class="thin" d="M3 8 V4 H33 V8 M3 12 V16 H33 V12" /><path d="M3 11 Q11 3 18 10 T33 9" />`;
const HOLLOW = svg`<path d="M2 15 Q7 14 10 10 M26 10 Q29 14 34 15" /><path class="bead" d="M11 9 Q18 3 25 9" /><path class="core" d="M11 9 Q18 3 25 9" />`;
const GAS = svg`<path class="thin" d="M2 10 H34" /><path class="gas" d="M7 8 V2 H12 V8 Z M22 12 V18 H29 V12 Z" />`;
const FINS = svg`<path class="thin" d="M2 10 H34" /><path class="fin" d="M6 10 V4 H11 V10 M15 10 V2 H18 V10 M24 10 V16 H30 V10" />`;

/** What each numbered ring stands for, with its value and what was asked, and the way there. */
export function ringList({ moments, result }: Debrief, moment: Moment): TemplateResult | typeof nothing {
  if (moments.length === 0) return nothing;
  return html`<ol class="rings" aria-label="Moments with a ring on the line">
    ${moments.map(
      (atS, i) =>
        html`<li><b aria-hidden="true">${i + 1}</b><span>${unbroken(ringWords(result, atS))}</span> ${moment(atS)}</li>`,
    )}
  </ol>`;
}

/** So many things are said of a ring at most. */
const MOST_SAID = 2;

function ringWords({ habits, marks }: Debrief['result'], atS: number): string {
  const habit = habits
    .filter((one) => one.fromS === atS)
    .map(({ words }) => words.replace(/[.?]?$/, (end) => end || '.'));
  const evidence = marks.flatMap(({ id, criteria, parts }) => {
    const unmet = criteria.filter((one) => !one.met && one.atS === atS);
    // What a demand has said already is not said again by the part that lost points for it.
    const lost = parts.filter(
      (one) => one.pointsLost > 0 && one.atS === atS && !unmet.some(({ value }) => value === one.raw),
    );
    return [
      ...unmet.map(({ demand, value, unit }) => {
        const came = unit ? ` It was ${amount(value, unit)}.` : '';
        return `${sentence(id)}, not met: ${demand}.${came}`;
      }),
      ...lost.map((part) => {
        const { label, raw, unit } = part;
        const scale = pointsScale(part);
        return `${sentence(id)}, ${label}${unit ? `: ${amount(raw, unit)}` : ''}.${scale && ` ${sentence(scale)}.`}`;
      }),
    ];
  });
  return [...habit, ...evidence].slice(0, MOST_SAID).join(' ');
}
