import { usualPlace, type Act } from '../panels/index.ts';
import { Held } from './held.ts';
import { focusOf } from './keys.ts';
import type { Shell } from './shell.ts';

/** The second diver's own hands on the number pad, by the usual places of its keys. */
const ACT_OF: Readonly<Record<string, Act>> = {
  Numpad8: 'add',
  Numpad2: 'vent',
  Numpad6: 'in',
  Numpad4: 'out',
  Numpad9: 'kick-up',
  Numpad3: 'kick-down',
};

/** What the second diver's own hands hold down. */
export function ownHands(shell: Shell, flown: () => boolean): () => ReadonlySet<Act> {
  const held = new Held();
  const view = shell.window;
  const actOf = ({ code }: KeyboardEvent) => ACT_OF[usualPlace(code, shell.view.settings.keys)];
  view.addEventListener('keydown', (event) => {
    const act = actOf(event);
    const shortcut = event.ctrlKey || event.metaKey || event.altKey;
    if (
      !act ||
      shortcut ||
      shell.view.moreOpen ||
      !flown() ||
      focusOf(shell.root.ownerDocument.activeElement) === 'typing'
    )
      return;
    event.preventDefault();
    if (!event.repeat) held.press(act);
  });
  view.addEventListener('keyup', (event) => {
    const act = actOf(event);
    if (act) held.release(act);
  });
  view.addEventListener('blur', () => held.releaseAll());
  return () => held.acts;
}
