import { html, nothing, svg } from 'lit';
import { USUAL_WEIGHING } from '../insight/index.ts';
import type { KitHead } from './kit-view.ts';
import { unbroken } from './look-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { gaugeText, massText, pullKg } from './units.ts';

/** Pixels a metre, where the top of the head is, and the height of the picture. */
const PX_PER_M = 210;
const TOP_PX = 26;
const WIDTH_PX = 150;
const HEIGHT_PX = 150;

/** The surface check: a head in section and the waterline, for three breaths, with a full cylinder and with the reserve. */
export class KitHeads extends Panel {
  static override properties = { heads: { attribute: false }, units: { attribute: false } };
  declare heads: readonly KitHead[];
  declare units: Units;

  constructor() {
    super();
    this.heads = [];
    this.units = 'metric';
  }

  override render() {
    const rows = [
      ['full', 'full cylinder'],
      ['reserve', `${gaugeText(USUAL_WEIGHING.reserveBar, this.units)} left`],
    ] as const;
    return html`<p class="how">Upright and still at the surface, jacket empty, with the lead that is carried.</p>
      ${rows.map(
        ([cylinder, words]) =>
          html`<h3>${unbroken(words)}</h3>
            <ul class="heads">
              ${this.heads.filter((head) => head.cylinder === cylinder).map((head) => this.#head(head))}
            </ul>`,
      )}`;
  }

  #head(head: KitHead) {
    return html`<li>
      <p class="breath-words">${head.breath}</p>
      ${picture(head)}
      <p><b>${head.words}</b></p>
      <p class="amount">${unbroken(this.#amount(head))}</p>
    </li>`;
  }

  #amount({ waterlineM, coveredN }: KitHead): string {
    if (waterlineM === null) return `${massText(Math.abs(pullKg(coveredN)), this.units)} heavy with the head covered`;
    const shown =
      this.units === 'metric' ? `${Math.round(waterlineM * 100)} cm` : `${Math.round(waterlineM / 0.0254)} in`;
    return `${shown} out of the water`;
  }
}
customElements.define('kit-heads', KitHeads);

function picture({ waterlineM }: KitHead) {
  // Who goes under is drawn with the water closed over the head.
  const lineY = TOP_PX + (waterlineM ?? -0.06) * PX_PER_M;
  return html`<svg viewBox="0 0 ${WIDTH_PX} ${HEIGHT_PX}" aria-hidden="true">
    ${svg`<rect class="water-fill" x="0" y=${lineY} width=${WIDTH_PX} height=${Math.max(HEIGHT_PX - lineY, 0)}></rect>
      <path class="head-of-diver" d=${HEAD_PATH}></path>
      <path class="strap" d="M54 46L92 46"></path>
      <path class="mask" d="M88 36L104 38L105 54L96 57L88 54Z"></path>
      <circle class="mouthpiece" cx="99" cy="65" r="7.5"></circle>
      <line class="waterline" x1="0" x2=${WIDTH_PX} y1=${lineY} y2=${lineY}></line>
      ${waterlineM === null ? nothing : svg`<path class="measure" d="M122 ${TOP_PX}H130M126 ${TOP_PX}V${lineY}M122 ${lineY}H130"></path>`}`}
  </svg>`;
}

/** Head, neck and shoulders from the side, looking right: 0.24 m of head, 0.16 m of neck and shoulders. */
const HEAD_PATH =
  'M76 26C93 26 101 38 101 50C101 62 97 76 82 77L80 90C98 94 112 102 116 118L120 150L30 150L34 118C38 102 50 95 60 90L60 74C52 66 50 58 51 48C52 36 60 26 76 26Z';
