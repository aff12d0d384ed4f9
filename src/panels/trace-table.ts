import { html, type TemplateResult } from 'lit';
import type { TraceData } from './trace-data.ts';
import { valueText } from './trace-kinds.ts';
import type { TracesView } from './trace-view.ts';
import { eventsAt, momentText } from './trace-words.ts';

/** Steps between two rows of the table, in rows of the recording, and how many rows at most. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 300, 600, 1200, 3000];
const MOST_ROWS = 60;

/** Rows of the recording that the table shows of a window: even steps, and every row in which something happened. */
export function tableRows(data: TraceData, events: TracesView['events'], edges: readonly [number, number]): number[] {
  const [first, last] = [data.rowAt(edges[0]), data.rowAt(edges[1])];
  if (first < 0) return [];
  const step = STEPS.find((one) => (last - first) / one <= MOST_ROWS) ?? STEPS.at(-1)!;
  const rows: number[] = [];
  for (let row = first; row <= last; row++)
    if (row % step === 0 || row === last || eventsAt(events, data.secondsAt(row))) rows.push(row);
  return rows;
}

/** The numbers behind the lines, for those who hear the page or want them. */
export function traceTable(view: TracesView, data: TraceData, edges: readonly [number, number]): TemplateResult {
  const { kinds, units, events } = view;
  const seconds = view.second ? (['depth', 'speed'] as const) : [];
  const measureOf = (id: 'depth' | 'speed') => ({ ...kinds.find((kind) => kind.id === id)!.shown[units], unit: '' });
  return html`<div class="table" tabindex="0" role="region" aria-label="Table of the traces">
    <table>
      <caption>
        ${momentText(edges[0])} to ${momentText(Math.min(edges[1], data.secondsAt(Math.max(data.rows - 1, 0))))}. Speed downward and
        force upward are positive; force is that at mid-breath.
      </caption>
      <thead>
        <tr>
          <th scope="col">time</th>
          ${kinds.map(({ words, shown }) => html`<th scope="col">${words}, ${shown[units].unit}</th>`)}
          ${seconds.map((id) => html`<th scope="col">${id} of 2</th>`)}
          <th scope="col">what happened</th>
        </tr>
      </thead>
      <tbody>
        ${tableRows(data, events, edges).map(
          (row) =>
            html`<tr>
              <th scope="row">${momentText(data.secondsAt(row))}</th>
              ${kinds.map((kind) => {
                const measure = kind.shown[units];
                return html`<td>${valueText(data.valueOf(kind.id, row), { ...measure, unit: '' }).trim()}</td>`;
              })}
              ${seconds.map((id) => {
                const shown = data.at(id === 'depth' ? 'secondDepth' : 'secondSpeed', row);
                return html`<td>${shown === null ? '' : valueText(shown, measureOf(id)).trim()}</td>`;
              })}
              <td>${eventsAt(events, data.secondsAt(row))}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
