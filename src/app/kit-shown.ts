import { READY_SETUPS, ledger, rigOf, type Rig, type Setup } from '../diver/index.ts';
import { USUAL_WEIGHING, neutralLeadKg, surfaceCheck, swingBudget, type LungRange } from '../insight/index.ts';
import type { KitDiver, KitFigure, KitHover, KitView } from '../panels/index.ts';
import { hoverOf, leastGasAt } from './kit-hover.ts';
import { carriedKg } from './kit-lead.ts';
import type { KitChange } from './kit-rows.ts';
import { pullsOf } from './readings-of.ts';

/** What the place stands at. */
export interface KitState {
  readonly id: string;
  readonly ownWords: string;
  readonly setup: Setup;
  /** Between which volumes its diver breathes. */
  readonly lungs: LungRange;
  readonly rows: readonly KitChange[];
  readonly triedRow: number | null;
  readonly goesAlong: boolean;
  readonly canUndo: boolean;
}

/** Everything that the place shows of where it stands. */
export function kitViewOf({ setup, lungs, rows, id, ...state }: KitState): KitView {
  const tried = state.triedRow === null ? null : rows[state.triedRow]!;
  const rig = rigOf(tried?.setup ?? setup);
  const swing = swingBudget(rig);
  return {
    ...state,
    setupId: id,
    setups: READY_SETUPS,
    basis: diverOf(setup, hoverOf(rigOf(setup), lungs)),
    rows,
    tried: tried ? diverOf(tried.setup, tried.hover) : null,
    heads: surfaceCheck(rig).map(({ word, ...head }) => ({ ...head, words: word })),
    depths: swing.depths,
    cylinderLossN: swing.cylinderLossN,
  };
}

function diverOf(setup: Setup, hover: KitHover): KitDiver {
  const rig = rigOf(setup);
  const neededKg = neutralLeadKg(rig);
  return {
    name: setup.name,
    note: setup.note ?? '',
    neededKg,
    carriedKg: carriedKg(setup),
    ...pullsOf(ledger(rig, leastGasAt(rig, USUAL_WEIGHING.depthM, USUAL_WEIGHING.reserveBar))),
    hover,
    figure: figureOf(setup, rig),
  };
}

function figureOf({ suit, cylinders, lead, apparatus }: Setup, rig: Rig): KitFigure {
  return {
    foamMm: suit.kind === 'none' ? 0 : suit.thicknessMm,
    suitGasM3: rig.drysuit?.minimumM3 ?? 0,
    suitWords:
      suit.kind === 'none'
        ? 'no suit'
        : suit.kind === 'drysuit'
          ? 'drysuit'
          : `${suit.thicknessMm} mm${suit.cut === 'two-piece' ? ', two-piece' : ''}`,
    cylinders: cylinders.map(({ waterL, material }) => ({ waterL, material })),
    leadKg: lead.map(({ massKg }) => massKg),
    loop: apparatus === 'loop',
  };
}
