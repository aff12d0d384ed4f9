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

  test('moves a number by its step and stays within its ends', async () => {
    const prompt = { kind: 'number', id: 'q', question: 'How much?', unit: 'L', least: 0, most: 1, step: 0.5 } as const;
    const { sheet, heard, press } = await asked(prompt);
    for (let i = 0; i < 5; i++) await press('more');
    expect(sheet.querySelector('output')!.textContent).toContain('1.0 L');
    await press('less');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: 0.5 }]);
  });

  test('puts items in another order without dragging', async () => {
    const { heard, press } = await asked({ kind: 'order', id: 'q', question: 'Which first?', items: options });
    await press('down: one up');
    await press('lock it');
    expect(heard).toEqual([{ kind: 'answer', answer: ['b', 'a'] }]);
  });

  test('forgets the choice when another question comes', async () => {
    const { sheet, press } = await asked({ kind: 'choice', id: 'q', question: 'Which way?', options });
    await press('down');
    sheet.prompt = { kind: 'choice', id: 'r', question: 'And now?', options };
    await sheet.updateComplete;
    expect(sheet.querySelector('[aria-pressed=true]')).toBeNull();
  });
});
