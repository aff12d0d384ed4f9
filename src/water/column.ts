import { waterDensityKgPerM3 } from './seawater.ts';

/** A piece of the column in which density is linear in depth; below the last one it stays as at its end. */
export interface WaterSegment {
  readonly fromM: number;
  readonly densityKgPerM3: number;
  readonly slopeKgPerM4: number;
  readonly pressurePa: number;
}

/** Still water: what a depth needs to become a density and a pressure. JSON-safe; segments run from the surface down. */
export interface Column {
  readonly surfacePressurePa: number;
  readonly gravityMps2: number;
  readonly segments: readonly WaterSegment[];
}

/** One layer of a column as a setup file gives it; mixing thickness is centred on where the layer begins. */
export interface Layer {
  readonly fromM: number;
  readonly salinityPsu: number;
  readonly temperatureC: number;
  readonly mixingM: number;
}

/** Density and pressure at one depth. */
export interface WaterAt {
  densityKgPerM3: number;
  pressurePa: number;
}

/**
 * The column of water of one density.
 * @throws {RangeError} when density, gravity or surface pressure is not positive
 */
export function uniformColumn(densityKgPerM3: number, surfacePressurePa: number, gravityMps2: number): Column {
  return columnOf([{ fromM: 0, densityKgPerM3, slopeKgPerM4: 0 }], surfacePressurePa, gravityMps2);
}

/** A mixing zone thinner than this is a sharp boundary, metres: the slope across it would lose the last digits. */
const SHARP_M = 1e-6;

/**
 * The column of several layers: density is linear in depth across `mixingM` centred on each boundary, and
 * p(z) = p0 + ∫ρ g dz exactly in each piece.
 * @param layers from the surface down; the first begins at 0, mixing zones do not overlap
 * @throws {RangeError} when layers are missing, out of order, or mix into one another
 */
export function layeredColumn(layers: readonly Layer[], surfacePressurePa: number, gravityMps2: number): Column {
  const first = layers[0];
  if (!first || first.fromM !== 0) throw new RangeError('layeredColumn: the first layer must begin at 0 m');
  const pieces = [{ fromM: 0, densityKgPerM3: densityOf(first), slopeKgPerM4: 0 }];
  let mixedToM = 0;
  for (let i = 1; i < layers.length; i++) {
    const layer = layers[i]!;
    const above = densityOf(layers[i - 1]!);
    const half = layer.mixingM < SHARP_M ? 0 : layer.mixingM / 2;
    if (!(layer.mixingM >= 0 && layer.fromM - half >= mixedToM && layer.fromM > layers[i - 1]!.fromM))
      throw new RangeError(`layeredColumn: layer ${i + 1} at ${layer.fromM} m must lie below the mixing zone above it`);
    mixedToM = layer.fromM + half;
    if (half > 0)
      pieces.push({
        fromM: layer.fromM - half,
        densityKgPerM3: above,
        slopeKgPerM4: (densityOf(layer) - above) / layer.mixingM,
      });
    pieces.push({ fromM: mixedToM, densityKgPerM3: densityOf(layer), slopeKgPerM4: 0 });
  }
  return columnOf(pieces, surfacePressurePa, gravityMps2);
}

/**
 * Writes density (kg/m³) and absolute pressure (Pa) at a depth into `out` and returns it; above the surface both are those
 * of the surface. Uses only + and ×, so that the step may call it.
 */
export function waterAt(column: Column, depthM: number, out: WaterAt): WaterAt {
  const depth = depthM > 0 ? depthM : 0;
  const segments = column.segments;
  let i = segments.length - 1;
  while (i > 0 && segments[i]!.fromM > depth) i--;
  const segment = segments[i]!;
  const below = depth - segment.fromM;
  out.densityKgPerM3 = segment.densityKgPerM3 + segment.slopeKgPerM4 * below;
  out.pressurePa =
    segment.pressurePa + column.gravityMps2 * below * (segment.densityKgPerM3 + 0.5 * segment.slopeKgPerM4 * below);
  return out;
}

/** Absolute pressure at a depth, in pascals. @throws {RangeError} when depthM is negative or not finite */
export function pressurePa(column: Column, depthM: number): number {
  if (!(depthM >= 0 && depthM < Infinity))
    throw new RangeError(`pressurePa: depthM must be finite and >= 0, got ${depthM}`);
  return waterAt(column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa;
}

function densityOf(layer: Layer): number {
  return waterDensityKgPerM3(layer.salinityPsu, layer.temperatureC);
}

function columnOf(
  pieces: readonly Omit<WaterSegment, 'pressurePa'>[],
  surfacePressurePa: number,
  gravityMps2: number,
): Column {
  if (!(surfacePressurePa > 0)) throw new RangeError(`column: surface pressure must be > 0, got ${surfacePressurePa}`);
  if (!(gravityMps2 > 0)) throw new RangeError(`column: gravity must be > 0, got ${gravityMps2}`);
  const segments: WaterSegment[] = [];
  let pressure = surfacePressurePa;
  pieces.forEach((piece, i) => {
    if (!(piece.densityKgPerM3 > 0)) throw new RangeError(`column: density must be > 0, got ${piece.densityKgPerM3}`);
    segments.push({ ...piece, pressurePa: pressure });
    const next = pieces[i + 1];
    if (!next) return;
    const thickness = next.fromM - piece.fromM;
    pressure += gravityMps2 * thickness * (piece.densityKgPerM3 + 0.5 * piece.slopeKgPerM4 * thickness);
  });
  return { surfacePressurePa, gravityMps2, segments };
}
