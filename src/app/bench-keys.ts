import { usualPlace, type BenchView, type MovedKeys } from '../panels/index.ts';
import type { BenchAsk } from '../bench/index.ts';
import type { fetchBench } from '../panels/index.ts';
import { focusOf } from './keys.ts';

type Hands = Awaited<ReturnType<typeof fetchBench>>;

const WAY_OF = { ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down' } as const;

/**
 * What a key asks of the bench, wherever the focus is on it: arrows carry, Enter takes and lets go, digits shape the putty. Null where
 * it is the browser's: a field is typed in, a button is pressed, something is asked or read.
 */
export function benchAskOf(
  event: Pick<KeyboardEvent, 'code' | 'shiftKey' | 'ctrlKey' | 'metaKey' | 'altKey'>,
  focused: Element | null,
  view: BenchView,
  keys: MovedKeys,
  { SHAPES, SQUEEZE_PA, TOOL_KEYS, carriedBy, handAsk }: Hands,
): BenchAsk | null {
  const focus = focusOf(focused);
  if (focus === 'typing' || event.ctrlKey || event.metaKey || event.altKey || view.prompt || view.lesson?.came)
    return null;
  const code = usualPlace(event.code, keys);
  const way = WAY_OF[code as keyof typeof WAY_OF];
  if (way) return carriedBy(view, way, event.shiftKey);
  if (code === 'Enter' || code === 'NumpadEnter' || code === 'Space') return focus === 'button' ? null : handAsk(view);
  const { tank, deep } = view;
  if (tank) {
    if (code === 'KeyN') return { do: 'next' };
    if (code === TOOL_KEYS.balance) return { do: 'balance' };
    if (code === TOOL_KEYS.spout) return { do: 'spout' };
    const shape = SHAPES.find(({ key }) => key === code)?.shape;
    const putty = tank.things.find(({ id }) => id === tank.chosenId)?.thing.spec.kind === 'putty';
    return shape && putty ? { do: 'shape', shape } : null;
  }
  if (deep?.kind === 'bottle' && (code === 'Minus' || code === 'Equal'))
    return { do: 'squeeze', pa: deep.squeezePa + (code === 'Equal' ? SQUEEZE_PA : -SQUEEZE_PA) };
  return null;
}
