import { READY_SETUPS, instantOf, ledger, rigOf, type Rig, type Setup } from '../diver/index.ts';
import { USUAL_WEIGHING, neutralLeadKg, surfaceCheck, swingBudget } from '../insight/index.ts';
import type { KitDiver, KitFigure, KitView } from '../panels/index.ts';
import { hoverOf } from './kit-hover.ts';
import { carriedKg } from './kit-lead.ts';
import type { KitChange } from './kit-rows.ts';
import { pullsOf } from './readings-of.ts';

/** What the place stands at. */
export interface KitState {
  readonly id: string;
  readonly ownWords: string;
  readonly setup: Setup;
  readonly rows: readonly KitChange[];
  readonly triedRow: number | null;
  readonly goesAlong: boolean;
  readonly canUndo: boolean;
}

/** Everything that the place shows of where it stands. */
export function kitViewOf({ setup, rows, id, ...state }: KitState): KitView {
  const tried = state.triedRow === null ? null : rows[state.triedRow]!;
  const rig = rigOf(tried?.setup ?? setup);
  const swing = swingBudget(rig);
  return {
    ...state,
    setupId: id,
    setups: READY_SETUPS,
    basis: diverOf(setup),
    rows,
    tried: tried ? { ...diverOf(tried.setup), hover: tried.hover } : null,
    heads: surfaceCheck(rig).map(({ word, ...head }) => ({ ...head, words: word })),
    depths: swing.depths,
    cylinderLossN: swing.cylinderLossN,
  };
}

function diverOf(setup: Setup): KitDiver {
  const rig = rigOf(setup);
  const neededKg = neutralLeadKg(rig);
  return {
    name: setup.name,
    note: setup.note ?? '',
    neededKg,
    carriedKg: carriedKg(setup),
    ...pullsOf(ledger(rig, weighed(rig))),
    hover: hoverOf(rig),
    figure: figureOf(setup, rig),
  };
}

/** The moment that lead is judged at. */
function weighed(rig: Rig) {
  return instantOf(rig, {
    depthM: USUAL_WEIGHING.depthM,
    cylinderBar: USUAL_WEIGHING.reserveBar,
    jacketM3: rig.jacket.residualM3,
    ...(rig.drysuit ? { suitGasM3: rig.drysuit.minimumM3 } : {}),
    ...(rig.loop ? { loopM3: rig.loop.minimumM3 } : {}),
  });
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
