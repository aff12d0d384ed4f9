import { rigOf, type Setup } from '../diver/index.ts';
import { USUAL_LUNGS, leadChanges, type LungRange } from '../insight/index.ts';
import type { KitRow } from '../panels/index.ts';
import { hoverOf, lungsFor } from './kit-hover.ts';
import { carriedKg, carrying, neededKg } from './kit-lead.ts';

/** A row of changes with the setup that comes of it, its lead included. */
export interface KitChange extends KitRow {
  readonly setup: Setup;
}

/** Lead more than now whose effect on the hover is shown, kilograms. */
const MORE_KG = [2, 4];
/** Nearer to what is needed than this, kilograms, nothing need be changed. */
const AS_NEEDED_KG = 0.05;

/**
 * Every change to a setup, one at a time.
 * @param goesAlong the lead is changed with what is needed, so that the diver carries as much too much as before; otherwise it
 * stays as it is
 * @param lungs between which volumes the diver breathes now; larger lungs are breathed farther
 */
export function kitRows(setup: Setup, goesAlong: boolean, lungs: LungRange = USUAL_LUNGS): KitChange[] {
  const before = rigOf(setup);
  const carried = carriedKg(setup);
  const surplus = carried - neededKg(setup);
  const rows = leadChanges(setup).map(({ change, group, leadKg, deltaKg, setup: changed }): KitChange => {
    const after = carrying(changed, goesAlong ? leadKg + surplus : carried);
    const rig = rigOf(after);
    // Where only the filling differs, the hover has it too.
    const full = group === 'gas used' ? setup.cylinders[0]?.fillBar : undefined;
    return {
      change,
      group,
      neededKg: leadKg,
      deltaKg,
      ofLead: false,
      hover: hoverOf(rig, lungsFor(lungs, before, rig), full),
      setup: after,
    };
  });
  return [...rows, ...leadRows(setup, carried, surplus, lungs)];
}

/** Changes of the lead itself: what is needed stays, what is carried does not. */
function leadRows(setup: Setup, carried: number, surplus: number, lungs: LungRange): KitChange[] {
  const row = (change: string, toKg: number): KitChange => {
    const after = carrying(setup, toKg);
    const deltaKg = carriedKg(after) - carried;
    const hover = hoverOf(rigOf(after), lungs);
    return { change, group: 'lead', neededKg: carried - surplus, deltaKg, ofLead: true, hover, setup: after };
  };
  return [
    ...(Math.abs(surplus) > AS_NEEDED_KG && carried - surplus >= 0
      ? [row('as much lead as is needed', carried - surplus)]
      : []),
    ...MORE_KG.map((moreKg) => row(`${moreKg} kg more lead than now`, carried + moreKg)),
  ];
}
