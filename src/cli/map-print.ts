import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { MapAcross, RecoveryMap } from '../insight/index.ts';
import { litres } from './options.ts';

/** What lies across a map, in trade units, each named by its key. */
type PrintedAcross =
  | { readonly kind: 'gas'; readonly of: 'jacket' | 'suit' | 'loop'; readonly surfaceL: readonly number[] }
  | { readonly kind: 'lead'; readonly moreLeadKg: readonly number[] }
  | { readonly kind: 'speed'; readonly speedMpmin: readonly number[] };

/** A recovery map as the command prints it. */
export interface PrintedMap extends Pick<RecoveryMap, 'topM' | 'bottomM' | 'columns'> {
  readonly across: PrintedAcross;
  readonly here: Readonly<Record<string, number>>;
}

/** The map with litres as they would be at one standard atmosphere, kilograms, or metres a minute. */
export function printedMap({ across, topM, bottomM, here, columns }: RecoveryMap): PrintedMap {
  const inUnit = across.kind === 'gas' ? litres : across.kind === 'speed' ? perMinute : (kg: number) => kg;
  return {
    across: printedAcross(across, across.values.map(inUnit)),
    topM,
    bottomM,
    here: { [unitKey(across)]: inUnit(here.across), depthM: here.depthM },
    columns,
  };
}

/** One line that says which way the axes of a map run and how far. */
export function axesText(map: RecoveryMap): string {
  const { across } = printedMap(map);
  const [name, values] =
    across.kind === 'gas'
      ? [`${across.of} gas, litres at ${STANDARD_PRESSURE_PA} Pa`, across.surfaceL]
      : across.kind === 'lead'
        ? ['lead more than now, kg', across.moreLeadKg]
        : ['speed, m/min, down positive', across.speedMpmin];
  const end = (value: number | undefined) => Number((value ?? 0).toPrecision(4));
  return `Downward: depth, m, ${end(map.topM)} to ${end(map.bottomM)}. Across: ${name}, ${end(values[0])} to ${end(values.at(-1))}.`;
}

function printedAcross(across: MapAcross, values: readonly number[]): PrintedAcross {
  if (across.kind === 'gas') return { kind: 'gas', of: across.of, surfaceL: values };
  return across.kind === 'lead' ? { kind: 'lead', moreLeadKg: values } : { kind: 'speed', speedMpmin: values };
}

function unitKey({ kind }: MapAcross): 'surfaceL' | 'moreLeadKg' | 'speedMpmin' {
  return kind === 'gas' ? 'surfaceL' : kind === 'lead' ? 'moreLeadKg' : 'speedMpmin';
}

function perMinute(mps: number): number {
  return mps * 60;
}
