// @vitest-environment happy-dom
import { render } from 'lit';
import { afterEach, describe, expect, test } from 'vitest';
import '../../src/panels/sheets.ts';
import '../../src/panels/time-strip.ts';
import { ACTS, type Act, type DeckView } from '../../src/panels/index.ts';
import { KEY_ROWS } from '../../src/panels/key-rows.ts';
import { PAD } from '../../src/app/pads.ts';
import { page } from '../../src/app/page.ts';
import { FIRST_VIEW, type PageView } from '../../src/app/page-view.ts';

/** One thing that a diver or whoever looks can do: its key, what a gamepad's part does, and what is pressed or touched. */
interface Control {
  readonly key: string;
  readonly pad: string;
  readonly touch: string;
}

const act = (name: Act, touch = `[data-act=${name}]`): Control => ({ key: ACTS[name].code, pad: name, touch });
const words = (text: string): string => `button: ${text}`;

/** Every control that the product promises. */
const CONTROLS: Readonly<Record<string, Control>> = {
  'jacket add': act('add'),
  'jacket vent': act('vent'),
  'jacket by mouth': act('blow'),
  'full vent': act('vent-all'),
  'drysuit add': act('suit-add'),
  'drysuit vent': act('suit-vent'),
  'drysuit valve earlier': act('valve-open', words('suit valve opens earlier')),
  'drysuit valve later': act('valve-shut', words('suit valve opens later')),
  'breath in': act('in'),
  'breath out': act('out'),
  'breath to its middle': act('middle'),
  'direct lungs': act('lungs', 'input[name=breathing]'),
  'hold breath': act('hold'),
  'kick up': act('kick-up'),
  'kick down': act('kick-down'),
  'head up': act('head-up'),
  level: act('level'),
  'head down': act('head-down'),
  'hold the line': act('line'),
  'take lead off': act('lead-off', words('lead off, at the surface')),
  'put lead on': act('lead-on', words('lead on, at the surface')),
  'release a piece of lead': { key: 'KeyX', pad: 'release', touch: words('let one piece go') },
  'release all lead': { key: 'Backspace', pad: 'release-all', touch: words('let all 2 go') },
  freeze: { key: 'KeyP', pad: 'freeze', touch: words('freeze Space') },
  'slower time': { key: 'Minus', pad: 'slower', touch: words('×½') },
  'faster time': { key: 'Equal', pad: 'faster', touch: words('×2') },
  'a step back': { key: 'BracketLeft', pad: 'step-back', touch: words('−0.1 s') },
  'a step on': { key: 'BracketRight', pad: 'step-on', touch: words('+0.1 s') },
  'rewind 10 s': { key: 'KeyZ', pad: 'back', touch: words('back 10 s') },
  restart: { key: 'KeyR', pad: 'restart', touch: words('restart') },
  'take over': { key: 'KeyV', pad: 'take-over', touch: words('take over from here') },
  bookmark: { key: 'KeyM', pad: 'mark', touch: words('bookmark') },
  'next step': { key: 'PageDown', pad: 'next', touch: 'presenter-strip .main' },
  'previous step': { key: 'PageUp', pad: 'previous', touch: words('back') },
  blank: { key: 'KeyB', pad: 'blank', touch: words('blank') },
};

const deck: DeckView = {
  first: false,
  ledger: true,
  drysuit: true,
  loop: false,
  line: true,
  lineHeld: false,
  down: new Set(),
  posture: null,
  leadLeft: 2,
  byHand: false,
  headOut: true,
  wanted: [],
  armed: true,
  jacketEmpty: false,
  ventsAll: false,
  breathing: 'direct',
  toggles: false,
  keys: {},
  readings: null,
};
const flown: PageView = {
  ...FIRST_VIEW,
  place: 'fly',
  ready: true,
  deck,
  setups: [{ id: 'one', name: 'One', note: '', load: () => Promise.reject(new Error('not here')) } as never],
  breathing: 'direct',
  valveHPa: 10,
  moreOpen: true,
  time: {
    fromS: 0,
    toS: 10,
    atS: 5,
    lookedBack: true,
    canTakeOver: true,
    marks: [],
    lines: [],
    ghost: null,
    listOpen: false,
    words: '',
  } as never,
  presenting: {
    cards: null,
    strip: { next: 'ask', canGoBack: true, notes: '', tally: [0, 0, 0, 0], lists: true, fullScreen: null },
    shown: null,
    words: '',
    hush: false,
    prompt: null,
    pad: { there: false, rows: [], waiting: '', words: '', moved: false },
    latency: '',
    fullScreen: null,
  },
};

afterEach(() => document.body.replaceChildren());

/** The page of a diver in a drysuit, everything open. */
async function shown(): Promise<HTMLElement> {
  await import('../../src/panels/presenting-door.ts');
  const root = document.createElement('div');
  document.body.append(root);
  render(page(flown), root);
  // Panels within panels come one turn after the other.
  for (let i = 0; i < 5; i++) await new Promise((turn) => setTimeout(turn, 0));
  return root;
}

function found(root: HTMLElement, touch: string): Element | undefined {
  if (!touch.startsWith('button: ')) return root.querySelector(touch) ?? undefined;
  const text = touch.slice('button: '.length);
  return [...root.querySelectorAll('button')].find((one) => one.textContent.replace(/\s+/g, ' ').trim() === text);
}

describe('every control of the product', () => {
  test.each(Object.entries(CONTROLS))('%s has a key that can be moved and a part of a gamepad', (_, { key, pad }) => {
    expect(KEY_ROWS.map(({ usual }) => usual)).toContain(key);
    expect(Object.values<string>(PAD)).toContain(pad);
  });

  test('has something to press or touch', async () => {
    const root = await shown();
    const missing = Object.entries(CONTROLS).filter(([, { touch }]) => !found(root, touch));
    expect(missing.map(([name]) => name)).toEqual([]);
  });

  test('is in this table, every act of the deck too; those of a closed loop stand for its breath', () => {
    const acts = Object.values(CONTROLS).map(({ pad }) => pad);
    expect(Object.keys(ACTS).filter((name) => !acts.includes(name))).toEqual(['diluent', 'nose-vent']);
    for (const name of ['diluent', 'nose-vent']) expect(Object.values<string>(PAD)).toContain(name);
  });

  test('no two things share a key, and none a part of the gamepad', () => {
    const keys = KEY_ROWS.map(({ usual }) => usual);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(Object.values(PAD)).size).toBe(Object.keys(PAD).length);
  });
});
