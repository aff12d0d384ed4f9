import { describe, expect, test } from 'vitest';
import { ACTS, type Act } from '../../src/panels/index.ts';
import { PAD, PAD_ROWS, Pads } from '../../src/app/pads.ts';

/** A pad of the usual layout whose buttons and sticks a test moves. */
function made() {
  const pad = {
    connected: true,
    axes: [0, 0, 0, 0],
    buttons: Array.from({ length: 17 }, () => ({ pressed: false, value: 0 })),
  };
  const plugged: (typeof pad | null)[] = [null, null];
  const heard: string[] = [];
  const pads = new Pads(
    { getGamepads: () => plugged as unknown as (Gamepad | null)[] },
    {
      act: (act, down) => heard.push(`${act} ${down ? 'down' : 'up'}`),
      command: (command) => heard.push(command),
      next: () => heard.push('next'),
    },
  );
  return { pad, plugged, heard, pads };
}

describe('Pads', () => {
  test('hears a pad that is plugged in during the dive, and lets go of everything when it is pulled out', () => {
    const { pad, plugged, heard, pads } = made();
    pads.poll();
    expect(pads.there).toBe(false);
    plugged[1] = pad;
    pad.buttons[7]!.pressed = true;
    pads.poll();
    pads.poll();
    expect([pads.there, heard]).toEqual([true, ['add down']]);
    plugged[1] = null;
    pads.poll();
    expect(heard).toEqual(['add down', 'add up']);
  });

  test('a stick counts from half its way, and trembling near there is one press', () => {
    const { pad, plugged, heard, pads } = made();
    plugged[0] = pad;
    for (const y of [-0.3, -0.52, -0.48, -0.51, -0.4, -0.2]) {
      pad.axes[1] = y;
      pads.poll();
    }
    expect(heard).toEqual(['kick-up down', 'kick-up up']);
  });

  test('a command happens once for each press', () => {
    const { pad, plugged, heard, pads } = made();
    plugged[0] = pad;
    for (const pressed of [true, true, false, true]) {
      pad.buttons[9]!.pressed = pressed;
      pads.poll();
    }
    expect(heard).toEqual(['freeze', 'freeze']);
  });

  test('lives in a browser that knows no pads, and in a frame that may not ask for them', () => {
    const { pads } = made();
    const forbidden = () => {
      throw new Error('not allowed here');
    };
    const deaf = { act: () => undefined, command: () => undefined, next: () => undefined };
    new Pads({ getGamepads: forbidden }, deaf).poll();
    new Pads({} as Navigator, { act: () => undefined, command: () => undefined, next: () => undefined }).poll();
    pads.poll();
    expect(pads.there).toBe(false);
  });

  test('every act has one part of the pad, said in words that belong to no maker', () => {
    for (const act of Object.keys(ACTS) as Act[]) expect(PAD.filter(({ does }) => does === act)).toHaveLength(1);
    for (const { part } of PAD_ROWS) expect(part).toMatch(/^(button \d+|(left|right) stick (left|right|up|down))$/);
    expect(new Set(PAD_ROWS.map(({ part }) => part)).size).toBe(PAD_ROWS.length);
  });
});
