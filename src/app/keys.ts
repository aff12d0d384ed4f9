import { ACTS, usualPlace, type Act, type LookToggle, type MovedKeys } from '../panels/index.ts';

/** What a key asks for besides the acts. */
export type KeyCommand = 'freeze' | 'restart' | 'back' | 'release' | 'release-all' | 'slower' | 'faster';

/** What of a key event is looked at, so that it can be told without a keyboard. */
export interface KeyLike {
  readonly code: string;
  readonly key: string;
  readonly repeat: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** What has the focus, as far as keys care: typing takes every key, a button takes its own two. */
export type Focus = 'typing' | 'button' | 'elsewhere';

/** Each has its line in the list of keys, where it can be moved. */
const COMMANDS: Readonly<Record<string, KeyCommand>> = {
  KeyP: 'freeze',
  Space: 'freeze',
  KeyR: 'restart',
  KeyZ: 'back',
  KeyX: 'release',
  Backspace: 'release-all',
  Minus: 'slower',
  Equal: 'faster',
};
/** Digits turn the looks over the water on and off. */
const LOOK_OF: Readonly<Record<string, LookToggle>> = {
  Digit1: 'reach',
  Digit2: 'forces',
  Digit3: 'hilltop',
  Digit4: 'stops',
  Digit5: 'map',
  Digit6: 'volumes',
  Digit7: 'ledger',
  Digit8: 'bands',
  Digit9: 'ahead',
  Digit0: 'whole',
};
const ACT_OF: ReadonlyMap<string, Act> = new Map(
  (Object.keys(ACTS) as Act[]).map((act) => [ACTS[act].code, act] as const),
);

/** What a key that goes down means; null where it is not ours: typed into a field, repeated, or part of a browser's shortcut. */
export function meaningOf(
  event: KeyLike,
  focus: Focus,
  moved: MovedKeys = {},
): { readonly act: Act } | { readonly command: KeyCommand } | { readonly look: LookToggle } | null {
  if (focus === 'typing' || event.repeat || event.ctrlKey || event.metaKey || event.altKey) return null;
  if (focus === 'button' && (event.code === 'Space' || event.code === 'Enter')) return null;
  const code = usualPlace(event.code, moved);
  const act = ACT_OF.get(code);
  if (act) return { act };
  const command = COMMANDS[code];
  if (command) return { command };
  const look = LOOK_OF[code];
  return look ? { look } : null;
}

/** The act of a key that goes up, whatever has the focus by then. */
export function actOfKey(code: string, moved: MovedKeys = {}): Act | undefined {
  return ACT_OF.get(usualPlace(code, moved));
}

/** What the focused element means for keys. */
export function focusOf(element: Element | null): Focus {
  if (!element) return 'elsewhere';
  if (element.closest('input:not([type=checkbox]):not([type=radio]), select, textarea, [contenteditable]'))
    return 'typing';
  return element.closest('button, summary, a, input') ? 'button' : 'elsewhere';
}
