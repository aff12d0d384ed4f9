import { html, nothing } from 'lit';
import type { BenchLessonView, BenchWish } from './bench-view.ts';
import { CAUTION } from './cautions.ts';
import { wish } from './wish.ts';

/** What is to be tried now, with what of it has come about; never the answer. */
export function benchTask(from: EventTarget, { trying }: BenchLessonView) {
  if (!trying) return nothing;
  return html`<section class="task" aria-label="To try">
    <h2 tabindex="-1">${trying.title}</h2>
    <p>${trying.hint}</p>
    <ul>
      ${trying.aims.map(
        ({ says, state }) => html`<li class=${state}><b>${state === 'met' ? 'seen' : 'to see'}:</b> ${says}</li>`,
      )}
    </ul>
    <button type="button" class="tool" @click=${() => ask(from, { do: 'go-on' })}>go on without</button>
  </section>`;
}

/** What was asked for names its step, where it does not begin with that name itself. */
function demandWords({ title, says }: { readonly title: string; readonly says: string }): string {
  return says.toLowerCase().startsWith(title.toLowerCase()) ? says : `${title}: ${says}`;
}

/** What came of a lesson at the bench: what was tried, and each prediction beside what the bench says. */
export function benchDebrief(from: EventTarget, { id, title, came, walkNext }: BenchLessonView) {
  if (!came) return nothing;
  // A class that called nothing out is told what comes, and not that it was wrong.
  const nobody = came.predictions.length > 0 && came.predictions.every(({ said }) => said === null);
  const demands = nobody ? came.demands.filter((one) => one.id !== 'predictions') : came.demands;
  const met = demands.every((one) => one.met);
  const all = came.passed ? 'all of it came about' : met ? 'what came of it' : 'what is still open';
  return html`<section class="came" aria-label="Debrief">
    <h2 tabindex="-1">${title}: ${all}</h2>
    <ul>
      ${demands.map((one) => html`<li><b>${one.met ? 'met' : 'not met'}:</b> ${demandWords(one)}</li>`)}
    </ul>
    <h3>${nobody ? 'What was asked' : 'You said, it came'}</h3>
    <ul>
      ${came.predictions.map(
        (one) =>
          html`<li>
            <p>${one.question}</p>
            <p>
              ${one.said !== null ? html`You said <b>${one.said}</b>; it` : nobody ? 'It' : 'You passed it over; it'} came to
              <b>${one.came}</b>${one.right ? ': as you said' : ''}${one.off ? `, ${one.off}` : ''}.
            </p>
            <p>${one.why}</p>
          </li>`,
      )}
    </ul>
    <h3>One question</h3>
    <p>${came.question}</p>
    <h3>What the water adds</h3>
    <p>${came.waterAdds}</p>
    <p class="note">${CAUTION.marks}</p>
    ${came.trouble ? html`<p class="note">${came.trouble}</p>` : nothing}
    <div class="row next">
      ${
        walkNext === null
          ? nothing
          : html`<button
              type="button"
              class="tool main on"
              @click=${() => wish(from, { kind: 'learn', ask: { do: 'show-next' } })}
            >
              ${walkNext ? `next: ${walkNext}` : 'end of this path'}
            </button>`
      }
      <button type="button" class="tool" @click=${() => wish(from, { kind: 'lesson', id })}>again</button>
      <button type="button" class="tool" @click=${() => wish(from, { kind: 'place', place: 'learn' })}>lessons</button>
    </div>
  </section>`;
}

function ask(from: EventTarget, what: BenchWish): void {
  wish(from, { kind: 'bench', ask: what });
}
