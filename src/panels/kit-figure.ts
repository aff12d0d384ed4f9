import { html, nothing, svg, type TemplateResult } from 'lit';
import type { KitFigure } from './kit-view.ts';
import type { Units } from './settings.ts';
import { massText } from './units.ts';

/** Foam and suit gas are drawn thicker than they are, as in the water: six times; pixels a metre. */
const THICKER = 6;
const PX_PER_M = 165;
/** Area over which a drysuit's gas lies, m². */
const SUIT_M2 = 1.9;
/** Pieces of lead that find room side by side. */
const MOST_SHOWN = 9;
/** Less than this, kilograms, is written as nothing, and drawn so. */
const LEAST_KG = 0.05;

const TRUNK =
  'M150 96C160 82 196 78 226 80C252 74 282 76 296 92C306 92 316 92 322 96C316 106 304 110 292 112C276 124 240 124 214 118C190 120 160 116 150 108Z';
const NEAR_LEG =
  'M158 94C132 92 112 100 92 112C76 120 62 124 50 126L52 138C68 137 86 134 104 127C124 119 142 114 162 112Z';
const FAR_LEG = 'M158 96C132 90 110 92 88 96C72 99 60 98 50 96L50 107C66 110 86 110 104 108C124 106 142 108 162 110Z';
const NEAR_FIN = 'M52 125C38 124 18 130 4 142C18 145 38 144 53 139Z';
const FAR_FIN = 'M51 95C38 89 20 86 5 87C16 98 36 106 51 108Z';
const ARM =
  'M284 100C290 112 300 122 312 128C322 130 336 128 346 122L343 113C332 117 322 118 314 116C306 112 300 104 296 96Z';

/** The kit on its diver, level and in section: suit, jacket, lungs, cylinders with 50 bar, lead where it sits. */
export function kitFigure(figure: KitFigure, units: Units): TemplateResult {
  const suitPx = (figure.foamMm / 1000) * THICKER * PX_PER_M * 0.62;
  const gapPx = (figure.suitGasM3 / SUIT_M2) * THICKER * PX_PER_M * 0.62;
  const leadKg = figure.leadKg.reduce((kg, piece) => kg + piece, 0);
  return html`<svg class="kit-figure" viewBox="0 12 400 160" role="img" aria-label=${spokenFigure(figure, leadKg, units)}>
    ${limb([FAR_FIN], 0, 0, 'fin')} ${limb([FAR_LEG], suitPx, gapPx, 'body')}
    ${cylinders(figure)} ${jacket()}
    ${limb([NEAR_FIN], 0, 0, 'fin')} ${limb([NEAR_LEG, TRUNK, ARM], suitPx, gapPx, 'body')}
    ${head()}
    ${
      figure.loop
        ? svg`<path class="gas-outline" d="M232 92C244 84 272 84 284 94C276 106 244 108 232 102Z"></path>`
        : svg`<ellipse class="gas-outline" cx="262" cy="98" rx="24" ry="11"></ellipse>`
    }
    ${leadPieces(figure.leadKg)}
    <text x="40" y="164">${figure.suitWords}</text>
    <text x="196" y="30" text-anchor="end">${cylinderWords(figure)}</text>
    <text x="190" y="164">lead ${massText(leadKg, units)}</text>
  </svg>`;
}

/** Cuts through limbs that belong together: ink without, then suit, then gas where there is any, then body. */
function limb(paths: readonly string[], suitPx: number, gapPx: number, inner: 'fin' | 'body') {
  const layer = (className: string, px: number) =>
    paths.map((d) => svg`<path class=${className} d=${d} stroke-width=${2 * px}></path>`);
  return svg`${layer('layer ink', suitPx + gapPx + 1.7)}
    ${suitPx > 0 ? layer('layer suit', suitPx + gapPx) : nothing}
    ${gapPx > 0 ? svg`${layer('layer ink', gapPx + 0.8)}${layer('layer gas-layer', gapPx)}${layer('layer ink', 0.8)}` : nothing}
    ${paths.map((d) => svg`<path class=${inner} d=${d}></path>`)}`;
}

function cylinders({ cylinders: set }: KitFigure) {
  return set.map(({ waterL }, i) => {
    const length = 62 + waterL * 3.4;
    const y = 46 - i * 9;
    const x = 284 - length;
    return svg`<path class="hose" d="M${x + length} ${y + 8}C340 ${y + 4} 352 70 346 96"></path>
      <rect class="shell" x=${x} y=${y} width=${length} height="17" rx="8"></rect>
      <rect class="content" x=${x + 3} y=${y + 3} width=${(length - 6) / 4} height="11" rx="5"></rect>
      <path class="valve" d="M${x + length} ${y + 8.5}h7"></path>`;
  });
}

/** The jacket's bladder, empty: a flat lens between back and cylinder. */
function jacket() {
  return svg`<path class="bladder" d="M186 72C204 63 258 63 276 74C258 79 204 78 186 72Z"></path>`;
}

function head() {
  return svg`<ellipse class="head-of-diver" cx="340" cy="90" rx="20" ry="19"></ellipse>
    <path class="strap" d="M321 84L354 84"></path>
    <path class="mask" d="M350 80L362 84L363 96L354 100L348 95Z"></path>
    <circle class="mouthpiece" cx="347" cy="106" r="7"></circle>`;
}

function leadPieces(pieces: readonly number[]) {
  const shown = pieces.filter((kg) => kg > LEAST_KG).slice(0, MOST_SHOWN);
  return shown.map((kg, i) => {
    const side = Math.min(7 + 6 * Math.sqrt(kg), 16);
    return svg`<rect class="lead-piece" x=${248 - i * 19 - side} y="118" width=${side} height=${side} rx="2"></rect>`;
  });
}

function spokenFigure({ suitWords, cylinders: set, loop }: KitFigure, leadKg: number, units: Units): string {
  const gas = set.map(({ waterL, material }) => `${waterL} litres of ${material}`).join(' and ');
  return `A diver, level: ${suitWords}, ${loop ? 'closed loop, ' : ''}cylinder of ${gas}, lead ${massText(leadKg, units)}.`;
}

function cylinderWords({ cylinders: set }: KitFigure): string {
  const words = set.map(({ waterL, material }) => `${waterL} L ${material}`);
  const alike = words.every((one) => one === words[0]);
  return alike && set.length > 1 ? `${set.length} × ${words[0]}` : words.join(' + ');
}
