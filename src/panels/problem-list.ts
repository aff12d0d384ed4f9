import { html, nothing } from 'lit';
import type { Problem } from '../diver/index.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** Problems that are shown at once: what a person mends in one go. */
const SHOWN = 12;

/** What went wrong, in words; of a file every problem with its line, what stands there, what may, and what to write. */
export class ProblemList extends Panel {
  static override properties = { words: { attribute: false }, problems: { attribute: false } };
  declare words: string;
  declare problems: readonly Problem[];

  constructor() {
    super();
    this.words = '';
    this.problems = [];
  }

  override render() {
    if (!this.words) return html``;
    return html`<aside role="alert" aria-label="Something to know">
      <p><strong>${this.words}</strong></p>
      ${
        this.problems.length > 0
          ? html`<ol>
              ${this.problems.slice(0, SHOWN).map(
                (problem) =>
                  html`<li>
                    Line ${problem.line}${problem.path ? `, ${problem.path}` : ''}: found ${problem.found}; allowed:
                    ${problem.allowed}. ${problem.suggestion}
                  </li>`,
              )}
            </ol>
            ${this.problems.length > SHOWN ? html`<p>and ${this.problems.length - SHOWN} more</p>` : nothing}`
          : nothing
      }
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'problems-read' })}>close</button>
    </aside>`;
  }
}
customElements.define('problem-list', ProblemList);
