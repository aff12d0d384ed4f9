// @vitest-environment happy-dom
import { afterEach, describe, expect, test } from 'vitest';
import { CAUTION } from '../../src/panels/cautions.ts';
import { KitSheet } from '../../src/panels/kit-sheet.ts';
import type { KitView } from '../../src/panels/kit-view.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';
import { diver, fresh, hover, view } from './kit-views.ts';

async function shown(change: Partial<KitView> = {}, units: 'metric' | 'imperial' = 'metric') {
  const sheet = Object.assign(new KitSheet(), { kit: view(change), units });
  const heard: Wish[] = [];
  sheet.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(sheet);
  const settled = async () => {
    await sheet.updateComplete;
    for (const panel of sheet.querySelectorAll('kit-diver, kit-changes, kit-heads, kit-depths, kit-tried, ledger-bars'))
      await (panel as KitSheet).updateComplete;
  };
  await settled();
  await settled();
  const press = async (words: string, within = 'kit-sheet') => {
    const buttons = [...document.querySelectorAll(`${within} button`)] as HTMLButtonElement[];
    buttons.find((one) => (one.getAttribute('aria-label') ?? one.textContent!.trim()) === words)!.click();
    await settled();
    await settled();
  };
  const text = (selector: string) => sheet.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
  return { sheet, heard, press, text };
}

/** What a row begins with, spaces and words for listeners included. */
const rowsOf = (sheet: KitSheet) => [...sheet.querySelectorAll<HTMLButtonElement>('button.change')];

afterEach(() => document.body.replaceChildren());

describe('kit-sheet', () => {
  test('says the lead that makes neutral with the caution directly beside it, and what is carried', async () => {
    const { sheet, text } = await shown();
    const needed = sheet.querySelector('.lead-needed')!;
    expect(text('.lead-needed')).toBe('3.7 kg of lead makes neutral');
    expect(needed.nextElementSibling!.textContent).toBe(CAUTION.model);
    expect(text('.carried p')).toBe('carried 4.2 kg, 0.5 kg too much: 0.5 kg of pull in water');
    expect(text('.judged')).toContain('At 5 m, 50 bar left, jacket empty, half a breath in');
  });

  test('in feet and pounds depths and gauges are read in feet and pounds a square inch too', async () => {
    const { press, text } = await shown({}, 'imperial');
    // 5 m ÷ 0.3048 m, 50 bar and 120 bar ÷ 6895 Pa.
    expect(text('.judged')).toContain('At 16 ft, 725 psi left, jacket empty');
    expect(text('.how')).toContain('neutral at 33 ft with 1740 psi');
    await press('at the surface');
    expect([...document.querySelectorAll('kit-heads h3')].at(-1)!.textContent).toBe('725\u00a0psi left');
    await press('over the depth');
    expect(text('.how')).toContain('from full to 725 psi');
  });

  test('where nobody is in the water nobody of that name can be chosen', async () => {
    const options = (sheet: KitSheet) =>
      [...sheet.querySelectorAll('option')].filter(({ value }) => value === '').length;
    const { sheet } = await shown({ ownWords: '' });
    expect(options(sheet)).toBe(0);
    sheet.remove();
    expect(options((await shown()).sheet)).toBe(1);
  });

  test('a row says change, kilograms, lead, breath and seconds, and is tried by pressing it', async () => {
    const { sheet, heard } = await shown();
    const row = rowsOf(sheet)[0]!;
    const words = row.textContent!.replace(/\s+/g, ' ');
    for (const part of ['fresh water instead of sea water', '−2.3 kg', '1.4 kg', '7.0 to 19.8 m', '7.6, then 7.4 s'])
      expect(words).toContain(part);
    row.click();
    expect(heard).toEqual([{ kind: 'kit', ask: { do: 'try', row: 0 } }]);
  });

  test('less lead is a bar to the left of the middle line, more to the right, at one scale', async () => {
    const { sheet } = await shown();
    const [less, more] = [...sheet.querySelectorAll('.change .change-bar')].map((bar) =>
      ['x', 'width'].map((name) => Number(bar.getAttribute(name))),
    ) as [number[], number[]];
    expect(less[0]! + less[1]!).toBeCloseTo(52, 9);
    expect(more[0]).toBe(52);
    expect(less[1]! / more[1]!).toBeCloseTo(2.3 / 1.5, 9);
  });

  test('brackets of breath stand on one depth axis: twice as deep is twice as far down', async () => {
    const rows = [10, 20].map((depthM) => fresh({ hover: hover({ reachM: [depthM, 40] }) }));
    const { sheet } = await shown({ rows });
    const tops = [...sheet.querySelectorAll('.change .bracket.is')].map((path) =>
      Number(/^M[\d.]+ ([\d.]+)H/.exec(path.getAttribute('d')!)![1]),
    );
    expect((tops[1]! - 1) / (tops[0]! - 1)).toBeCloseTo(2, 6);
  });

  test('a tried row is pressed, says its sentence, and can be kept, put back or flown', async () => {
    const { sheet, heard, press, text } = await shown({ triedRow: 0, tried: diver({ neededKg: 1.4, carriedKg: 1.9 }) });
    expect(rowsOf(sheet).map((row) => row.getAttribute('aria-pressed'))).toEqual(['true', 'false']);
    expect(text('.sentence')).toBe('With fresh water instead of sea water you need 2.3 kg less.');
    expect(text('.lead-needed b')).toBe('1.4 kg');
    await press('keep', 'kit-diver');
    await press('put back', 'kit-diver');
    await press('fly this', 'kit-diver');
    expect(heard).toEqual([
      { kind: 'kit', ask: { do: 'keep' } },
      { kind: 'kit', ask: { do: 'try', row: null } },
      { kind: 'kit', ask: { do: 'fly' } },
    ]);
  });

  test('undo is there once something was kept, and not while a change is tried', async () => {
    const undo = (sheet: KitSheet) =>
      [...sheet.querySelectorAll('button')].filter((button) => button.textContent!.trim() === 'undo').length;
    expect(undo((await shown()).sheet)).toBe(0);
    expect(undo((await shown({ canUndo: true })).sheet)).toBe(1);
    expect(undo((await shown({ canUndo: true, triedRow: 0, tried: diver() })).sheet)).toBe(0);
  });

  test('lead is carried by half a kilogram, or by a pound, more or less', async () => {
    const metric = await shown();
    await metric.press('more lead');
    await metric.press('less lead');
    expect(metric.heard).toEqual([
      { kind: 'kit', ask: { do: 'carry', moreKg: 0.5 } },
      { kind: 'kit', ask: { do: 'carry', moreKg: -0.5 } },
    ]);
    document.body.replaceChildren();
    const imperial = await shown({}, 'imperial');
    await imperial.press('more lead');
    expect(imperial.heard).toEqual([{ kind: 'kit', ask: { do: 'carry', moreKg: 0.45359237 } }]);
  });

  test('the surface check says who goes under and how far others are out', async () => {
    const { sheet, press } = await shown();
    await press('at the surface');
    const words = sheet.querySelector('kit-heads')!.textContent!.replace(/\s+/g, ' ');
    // 19.6133 N ÷ 9.80665 m/s²
    expect(words).toContain('goes under 2.0 kg heavy with the head covered');
    expect(words).toContain('at eye level 12 cm out of the water');
  });

  test('over the depth: a table with what the suit lost, jacket there and at the surface, and litres to let out', async () => {
    const { sheet, press } = await shown();
    await press('over the depth');
    const cells = [...sheet.querySelectorAll('tbody tr:nth-child(2) :is(th, td)')].map((cell) =>
      cell.textContent!.replace(/\s+/g, ' ').trim(),
    );
    // 29.42 N ÷ 9.80665; litres as given
    expect(cells).toEqual(['10 m', '3.0 kg', '3.8 L', '7.6 L', '0.4 L']);
  });

  test('no part of it writes a style attribute: the content policy refuses those', async () => {
    const { sheet, press } = await shown({ triedRow: 0, tried: diver() });
    for (const words of ['at the surface', 'over the depth', 'one change at a time']) {
      await press(words);
      expect(sheet.querySelector('[style]')).toBeNull();
    }
  });
});
