import {
  PUTTY_BALL,
  PUTTY_BOAT,
  PUTTY_TRAY,
  TANK_SETS,
  changedSpec,
  type BenchAsk,
  type PuttyShape,
  type ThingAsk,
  type ThingSpec,
} from '../bench/index.ts';
import type { BenchScene, HandMove } from './bench-lesson.ts';

const SHAPES: Readonly<Record<NonNullable<HandMove['shape']>, PuttyShape>> = {
  ball: PUTTY_BALL,
  tray: PUTTY_TRAY,
  boat: PUTTY_BOAT,
};

/** What a scene changes in the first of its things. */
function changes({ massKg, material, widthMm, heightMm }: BenchScene): ThingAsk[] {
  const asks: ThingAsk[] = [];
  if (material !== undefined) asks.push({ do: 'material', material });
  if (massKg !== undefined) asks.push({ do: 'dial', id: 'mass', value: massKg });
  if (widthMm !== undefined) asks.push({ do: 'dial', id: 'width', value: widthMm / 1000 });
  if (heightMm !== undefined) asks.push({ do: 'dial', id: 'height', value: heightMm / 1000 });
  return asks;
}

/** What has to be asked of a bench so that it stands as the scene says. */
export function preparing(scene: BenchScene): BenchAsk[] {
  if (scene.mode !== 'tank') return [{ do: 'anew' }];
  return [{ do: 'water', water: scene.water }, { do: 'set', set: scene.set }, ...changes(scene)];
}

/** The things of a scene as they are. */
export function specsOf(scene: BenchScene): readonly ThingSpec[] {
  const [first, ...others] = TANK_SETS[scene.set];
  return first ? [changes(scene).reduce(changedSpec, first), ...others] : others;
}

/** What a scripted hand asks of the bench; `anew` is the scene's own beginning. */
export function askOf(scene: BenchScene, move: HandMove): BenchAsk[] {
  switch (move.do) {
    case 'anew':
      return preparing(scene);
    case 'choose':
      return [{ do: 'choose', id: move.thing ?? 1 }];
    case 'shape':
      return [{ do: 'shape', shape: SHAPES[move.shape ?? 'ball'] }];
    case 'water':
      return [{ do: 'water', water: move.water ?? scene.water }];
    case 'hook':
      return [{ do: 'hook', byM: (move.byMm ?? 0) / 1000 }];
    case 'depth':
      return [{ do: 'depth', depthM: move.atM ?? 0 }];
    case 'squeeze':
      return [{ do: 'squeeze', pa: (move.kPa ?? 0) * 1000 }];
    case 'let-go':
    case 'take':
    case 'under':
    case 'balance':
    case 'spout':
      return [{ do: move.do }];
  }
}
