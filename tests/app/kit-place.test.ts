// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { Kit } from '../../src/app/kit.ts';
import { readySetup } from '../../src/app/setups.ts';
import type { Shell } from '../../src/app/shell.ts';
import type { Setup } from '../../src/diver/index.ts';

function kitOver(setup: Setup | null, id = '') {
  const shell = {
    view: {} as Partial<Shell['view']>,
    show: (change: object) => Object.assign(shell.view, change),
  };
  return {
    kit: new Kit(shell as unknown as Shell, { flown: () => ({ lesson: null, setup, id }), fly: () => {} }),
    shell,
  };
}

test('a dive without a setup shows a ready one by its own name, not as the diver in the water', async () => {
  const { kit, shell } = kitOver(null);
  await kit.open();
  expect(shell.view.kit).toMatchObject({ setupId: 'temperate-sea', ownWords: '' });
  await kit.hear({ do: 'choose', id: '' });
  expect(shell.view.kit!.setupId).toBe('temperate-sea');
});

test('who comes by the address of a ready setup can choose the diver in the water', async () => {
  const { kit, shell } = kitOver(await readySetup('two-piece'));
  await kit.open('temperate-sea');
  expect(shell.view.kit).toMatchObject({ setupId: 'temperate-sea', ownWords: 'the diver in the water' });
  await kit.hear({ do: 'choose', id: '' });
  expect(shell.view.kit).toMatchObject({ setupId: '', basis: { name: (await readySetup('two-piece')).name } });
});
