import { describe, expect, test } from 'vitest';
import { ACTS, swapped, type Act, type MovedKeys } from '../../src/panels/index.ts';
import { PAD, PAD_ROWS, Pads, padText, type PadEars } from '../../src/app/pads.ts';

/** A pad of the usual layout whose buttons and sticks a test moves. */
function made() {
  const pad = {
    connected: true,
    axes: [0, 0, 0, 0],
    buttons: Array.from({ length: 17 }, () => ({ pressed: false, value: 0 })),
  };
  const plugged: (typeof pad | null)[] = [null, null];
  const heard: string[] = [];
  const places: { moved: MovedKeys } = { moved: {} };
  const ears: PadEars = {
    moved: () => places.moved,
    act: (act, down) => heard.push(`${act} ${down ? 'down' : 'up'}`),
    command: (command) => heard.push(command),
    present: (what) => heard.push(what),
    time: (ask) => heard.push(JSON.stringify(ask)),
  };
  const pads = new Pads({ getGamepads: () => plugged as unknown as (Gamepad | null)[] }, ears);
  const push = (button: number, pressed: boolean) => {
    pad.buttons[button]!.pressed = pressed;
    pads.poll();
  };
  return { pad, plugged, heard, pads, push, places, ears };
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
    const { pads, ears } = made();
    const forbidden = () => {
      throw new Error('not allowed here');
    };
    new Pads({ getGamepads: forbidden }, ears).poll();
    new Pads({} as Navigator, ears).poll();
    pads.poll();
    expect(pads.there).toBe(false);
  });

  test('every act has one part of the pad, said in words that belong to no maker', () => {
    for (const act of Object.keys(ACTS) as Act[])
      expect(Object.values(PAD).filter((does) => does === act)).toHaveLength(1);
    for (const { usual } of PAD_ROWS)
      expect(usual).toMatch(/^(button 9 and )?(button \d+|(left|right) stick (left|right|up|down))$/);
  });

  test('the ninth button gives the others a second meaning, and each lets go of what it began', () => {
    const { pad, plugged, heard, push } = made();
    plugged[0] = pad;
    push(5, true);
    push(8, true);
    push(5, false);
    push(5, true);
    push(8, false);
    push(5, false);
    push(8, true);
    push(14, true);
    expect(heard).toEqual(['vent down', 'vent up', 'vent-all down', 'vent-all up', '{"do":"step","byS":-0.1}']);
  });

  test('a part that was moved does the other thing, and what was there does what it did', () => {
    const { pad, plugged, heard, push, places } = made();
    plugged[0] = pad;
    const { keys, words } = swapped(PAD_ROWS, padText, {}, 'button 8', 'button 6');
    expect(words).toBe('“jacket add” is on button 6 now; “jacket vent”, which was there, is on button 8.');
    places.moved = keys;
    for (const button of [5, 7]) {
      push(button, true);
      push(button, false);
    }
    expect(heard).toEqual(['add down', 'add up', 'vent down', 'vent up']);
  });

  test('a part that is waited for is told, together with the ninth button too, and does nothing', () => {
    const { pad, plugged, heard, pads, push } = made();
    plugged[0] = pad;
    const told: string[] = [];
    pads.wait((place) => told.push(place));
    push(7, true);
    push(7, false);
    pads.wait((place) => told.push(place));
    push(8, true);
    push(2, true);
    push(2, false);
    push(8, false);
    push(7, true);
    expect([told, heard]).toEqual([['button 8', 'button 9 and button 3'], ['add down']]);
  });
});
