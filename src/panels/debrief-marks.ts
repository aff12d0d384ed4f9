import { html, nothing, type TemplateResult } from 'lit';
import type { Mark, MarkPart, Report } from '../lesson/index.ts';
import { unbroken } from './look-words.ts';
import type { CompareView, DebriefKnown } from './debrief-view.ts';

/** A button that goes to a moment; nothing where there is none. */
export type Moment = (atS: number | null) => TemplateResult | typeof nothing;

/** Words of all marks beside each other: this flight, the last ones, and the one that is compared. */
export function markTable(
  marks: readonly Mark[],
  known: DebriefKnown | null,
  { marks: others, name }: CompareView,
): TemplateResult | typeof nothing {
  if (marks.length === 0) return nothing;
  const reports = known?.reports ?? {};
  const of = Math.max(0, ...Object.values(reports).map((report) => report.of));
  return html`<table class="marks">
    <thead>
      <tr>
        <th scope="col">mark</th>
        <th scope="col">this flight</th>
        ${of > 0 ? html`<th scope="col">${of > 1 ? `last ${of} flights` : 'reported'}</th>` : nothing}
        ${others ? html`<th scope="col" class="beside">${name}</th>` : nothing}
      </tr>
    </thead>
    <tbody>
      ${marks.map(
        ({ id, word }) =>
          html`<tr>
            <th scope="row">${id}</th>
            <td>${word}</td>
            ${of > 0 ? html`<td class="report">${reports[id]?.word ?? ''}</td>` : nothing}
            ${others ? html`<td class="beside">${others.find((one) => one.id === id)?.word ?? ''}</td>` : nothing}
          </tr>`,
      )}
    </tbody>
  </table>
  ${of > 0 ? html`<p class="of">${reportWords(of)}</p>` : nothing}`;
}

function reportWords(of: number): string {
  if (of === 1) return 'Reported on one flight so far: fly it twice more; one mark alone tells little.';
  if (of === 2) return 'Reported half-way between two flights so far; three make it firm.';
  return 'Reported on the middle of the last three flights, all in this kit.';
}

/** A mark with all it came from, and the same of the flight that is compared. */
export function markArticle(
  mark: Mark,
  report: Report | undefined,
  { marks, name }: CompareView,
  moment: Moment,
): TemplateResult {
  const other = marks?.find(({ id }) => id === mark.id);
  return html`<article class="mark">
    <h3>${mark.id} <b>${mark.word}</b> <span class="score">${Math.round(mark.score)} of 100</span></h3>
    ${report && report.of > 1 ? html`<p>Over the last ${report.of} flights: <b>${report.word}</b></p>` : nothing}
    <ul>
      ${mark.criteria.map((one) => {
        const same = other?.criteria.find(({ id }) => id === one.id);
        const beside = same?.unit ? `; ${name}: ${amount(same.value, same.unit)}` : '';
        return html`<li>
          <span>${one.met ? 'met' : html`<b>not met</b>`}: ${unbroken(`${one.demand}${one.unit ? `; it was ${amount(one.value, one.unit)}` : ''}${beside}`)}</span>
          ${moment(one.atS)}
        </li>`;
      })}
    </ul>
    <details>
      <summary>where the points went</summary>
      <ul>
        ${mark.parts.map((part) => partItem(part, other, name, moment))}
      </ul>
    </details>
  </article>`;
}

function partItem(part: MarkPart, other: Mark | undefined, name: string, moment: Moment): TemplateResult {
  const scale = pointsScale(part);
  const points = Math.round(part.pointsLost * 10) / 10;
  const same = other?.parts.find(({ id }) => id === part.id);
  const beside = same?.unit ? ` ${name}: ${amount(same.raw, same.unit)}.` : '';
  return html`<li>
    <span
      >${unbroken(`${part.label}${part.unit ? `: ${amount(part.raw, part.unit)}` : ''}${scale && ` (${scale})`}.${beside}`)}
      ${points < 0 ? `${-points} points given back` : `${points} points lost`}. ${unbroken(part.reason)}</span
    >
    ${moment(part.atS)}
  </li>`;
}

/** Between which values a part's points go: "full points up to 0.10 m, none from 1.5 m on"; empty where they go otherwise. */
export function pointsScale({ good, bad, unit }: Pick<MarkPart, 'good' | 'bad' | 'unit'>): string {
  if (good === null || bad === null) return '';
  const [all, none] = [amount(good, unit), amount(bad, unit)];
  return good < bad ? `full points up to ${all}, none from ${none} on` : `full points from ${all}, none at ${none}`;
}

/** A share is as good as whole when it is no further from it than sums of floating numbers are. */
const WHOLE = 1e-6;

/** A value with its unit, as many digits as say something; a share that is not whole is not shown so, or 79.96 % would look met. */
export function amount(value: number, unit: string): string {
  const digits =
    unit === '%'
      ? shareDigits(value)
      : Math.abs(value) >= 100 || Number.isInteger(value)
        ? 0
        : Math.abs(value) >= 1
          ? 1
          : 2;
  return unit ? `${value.toFixed(digits)} ${unit}` : value.toFixed(digits);
}

/** Digits by which a share is told from the whole number beside it. */
function shareDigits(share: number): number {
  if (Math.abs(share - Math.round(share)) < WHOLE) return 0;
  let digits = 1;
  while (Number.isInteger(Number(share.toFixed(digits)))) digits++;
  return digits;
}
