// @vitest-environment happy-dom
import { afterEach, describe, expect, test } from 'vitest';
import type { Prompt } from '../../src/lesson/index.ts';
import { QuestionSheet } from '../../src/panels/question-sheet.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

async function asked(
  prompt: Prompt,
): Promise<{ sheet: QuestionSheet; heard: Wish[]; press: (words: string) => Promise<void> }> {
  const sheet = Object.assign(new QuestionSheet(), { prompt });
  const heard: Wish[] = [];
  sheet.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(sheet);
  await sheet.updateComplete;
  const press = async (words: string) => {
    const found = [...sheet.querySelectorAll('button')].find(
      (button) => (button.getAttribute('aria-label') ?? button.textContent?.trim()) === words,
    );
    found!.click();
    await sheet.updateComplete;
  };
  return { sheet, heard, press };
}

afterEach(() => document.body.replaceChildren());

describe('question-sheet', () => {
  const options = [
    { id: 'a', words: 'up' },
    { id: 'b', words: 'down' },
  ];

  test('locks a choice only once there is one', async () => {
    const { sheet, heard, press } = await asked({ kind: 'choice', id: 'q', question: 'Which way?', options });
    expect(sheet.querySelector<HTMLButtonElement>('.main')!.disabled).toBe(true);
    await press('down');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: 'b' }]);
  });

  test('says which of how many predictions it is, and when the answers come', async () => {
    const { sheet } = await asked({ kind: 'choice', id: 'q', question: 'Which way?', options });
    const kind = () => sheet.querySelector('.kind')!.textContent;
    expect(kind()).toBe('Predict first; the answer comes after');
    for (const [asking, words] of [
      [{ at: 2, of: 3 }, 'Predict, 2 of 3; answers after the dive'],
      [{ at: 1, of: 1 }, 'Predict; the answer comes after the dive'],
    ] as const) {
      sheet.asking = asking;
      await sheet.updateComplete;
      expect(kind()).toBe(words);
    }
  });

  test('letters the answers of which the water shows the lines, and says so', async () => {
    const { sheet, press, heard } = await asked({ kind: 'choice', id: 'q', question: 'Which way?', options });
    expect(sheet.querySelector('.letter')).toBeNull();
    sheet.drawn = 25;
    await sheet.updateComplete;
    const words = [...sheet.querySelectorAll('.option')].map(({ textContent }) =>
      textContent.trim().replace(/\s+/g, ' '),
    );
    expect(words).toEqual(['A up', 'B down']);
    expect(sheet.querySelector('.drawn')!.textContent).toContain('25 s ahead');
    await press('B down');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: 'b' }]);
  });

  test('moves a depth by half metres, by its step, and by the keys of the pin in the water: all the same number', async () => {
    const scale = { unit: 'm', least: 3, most: 13, step: 0.1 };
    const { sheet, heard, press } = await asked({ kind: 'place', id: 'q', question: 'How deep?', ...scale });
    expect(sheet.querySelector('.water-pin')).toBeNull();
    Object.assign(sheet, { drawn: 10, pin: { x: 100, y: 200, pxPerM: 40 } });
    await press('more by 0.5 m');
    await press('less by 0.1 m');
    const pin = sheet.querySelector<HTMLElement>('.water-pin')!;
    expect([pin.getAttribute('aria-valuetext'), pin.style.left, pin.style.top]).toEqual(['8.4 m', '100px', '200px']);
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowUp', 'a']) {
      const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
      pin.dispatchEvent(event);
      await sheet.updateComplete;
      expect(event.defaultPrevented).toBe(key !== 'a');
    }
    expect(sheet.querySelector('output')!.textContent).toBe('8.5 m');
    for (const [key, shiftKey, words] of [
      ['ArrowDown', true, '9.5 m'],
      ['Home', false, '3.0 m'],
      ['End', false, '13.0 m'],
      // A clicker's.
      ['PageUp', false, '13.0 m'],
      ['ArrowUp', true, '12.0 m'],
    ] as const) {
      pin.dispatchEvent(new KeyboardEvent('keydown', { key, shiftKey, bubbles: true, cancelable: true }));
      await sheet.updateComplete;
      expect(sheet.querySelector('output')!.textContent).toBe(words);
    }
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: 12 }]);
  });

  test('moves a number by its step and stays within its ends', async () => {
    const prompt = { kind: 'number', id: 'q', question: 'How much?', unit: 'L', least: 0, most: 1, step: 0.5 } as const;
    const { sheet, heard, press } = await asked(prompt);
    for (let i = 0; i < 5; i++) await press('more by 0.5 L');
    expect(sheet.querySelector('output')!.textContent).toContain('1.0 L');
    await press('less by 0.5 L');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: 0.5 }]);
  });

  test('puts items in another order without dragging', async () => {
    const { heard, press } = await asked({ kind: 'order', id: 'q', question: 'Which first?', items: options });
    await press('down: one up');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: ['b', 'a'] }]);
  });

  test('draws a curve as one value for each place along it', async () => {
    const scale = { unit: 'L', least: 0, most: 1, step: 0.05 };
    const { sheet, heard, press } = await asked({
      kind: 'curve',
      id: 'q',
      question: 'How much?',
      along: [5, 10],
      alongUnit: 'm',
      ...scale,
    });
    await press('more by 0.05 L');
    expect([...sheet.querySelectorAll('output')].map((output) => output.textContent)).toEqual(['0.55 L', '0.50 L']);
    expect(sheet.querySelectorAll('[role=group]')[1]!.getAttribute('aria-label')).toBe('at 10 m');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: [0.55, 0.5] }]);
  });

  test('shows what a dive came to at its freezes, and goes on', async () => {
    const frame = { atS: 15, words: 'The first press.', depthM: 11.08, speedMpmin: 26.6, jacketL: 1.4, netKg: -6.3 };
    const still = { atS: 20, words: 'Still.', depthM: 8, speedMpmin: -0.2, jacketL: 3, netKg: 0.05 };
    const { sheet, heard, press } = await asked({
      kind: 'watch',
      id: 'q',
      title: 'Late',
      text: 'See.',
      frames: [frame, still],
    });
    const lines = [...sheet.querySelectorAll('li')].map((item) => item.textContent.replace(/\s+/g, ' ').trim());
    expect(lines).toEqual([
      'The first press. 15 s: 11.1 m, sinking 27 m/min, 6.3 kg heavy, 1.4 L in the jacket.',
      'Still. 20 s: 8.0 m, still, neutral, 3.0 L in the jacket.',
    ]);
    await press('go on');
    expect(heard).toEqual([{ kind: 'answer', answer: null }]);
  });

  test('forgets the choice when another question comes', async () => {
    const { sheet, press } = await asked({ kind: 'choice', id: 'q', question: 'Which way?', options });
    await press('down');
    sheet.prompt = { kind: 'choice', id: 'r', question: 'And now?', options };
    await sheet.updateComplete;
    expect(sheet.querySelector('[aria-pressed=true]')).toBeNull();
  });
});
