// @vitest-environment happy-dom
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readySetup } from '../../src/app/setups.ts';
import { rigOf } from '../../src/diver/index.ts';
import {
  LESSONS,
  flyLesson,
  lessonSetup,
  lineEvidence,
  limitsInForce,
  type Habit,
  type PredictionOutcome,
} from '../../src/lesson/index.ts';
import { HABIT_KINDS } from '../../src/lesson/habit-kinds.ts';
import { howFar } from '../../src/panels/debrief-found.ts';
import { amount, pointsScale } from '../../src/panels/debrief-marks.ts';
import { DebriefSheet } from '../../src/panels/debrief-sheet.ts';
import type { Debrief, DebriefKnown } from '../../src/panels/debrief-view.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

afterEach(() => document.body.replaceChildren());

const firstDive = LESSONS.find(({ id }) => id === 'first-dive')!;
const rig = rigOf(lessonSetup(firstDive, await readySetup(firstDive.setup.ready)));
const [learner, steady] = (['learner', 'steady'] as const).map((pilot) => flyLesson(firstDive, rig, pilot, 3));

function habit(id: Habit['id'], fromS: number): Habit {
  const { states, question } = HABIT_KINDS[id];
  return { id, fromS, toS: fromS + 2, words: states ? 'Gas went in for 3 s' : question, states, question };
}

const KNOWN: DebriefKnown = {
  reports: { hover: { word: 'nearly', score: 60, of: 3 } },
  next: { lessonId: 'one-breath', title: 'One breath', again: false, reason: 'Because of this.' },
  earlier: [1, 2, 3, 4].map((day) => ({
    at: `2026-11-0${day}T18:00:00.000Z`,
    marks: [{ id: 'hover', word: 'nearly' }],
    right: 1,
    asked: 2,
    passed: false,
    word: day === 1 ? 'Breathe out first.' : '',
  })),
  others: 2,
  id: 7,
  word: 'Wait.',
  words: '',
};

const DEBRIEF: Debrief = {
  lesson: firstDive,
  result: learner!,
  predictions: [],
  question: 'When?',
  moments: [],
  line: lineEvidence(firstDive, learner!.run, learner!.dive, learner!.marks),
  limits: limitsInForce({ change: { excessM: 2 }, why: 'A thick suit.' }, ['ascent']),
  attempt: 1,
  flownBy: '',
  known: null,
  compare: { choices: [], chosen: '', name: '', says: '', marks: null },
};

async function shown(change: Partial<Debrief> = {}) {
  const sheet = Object.assign(new DebriefSheet(), { debrief: { ...DEBRIEF, ...change } });
  const heard: Wish[] = [];
  sheet.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(sheet);
  await sheet.updateComplete;
  const text = (of: string) =>
    [...sheet.querySelectorAll(of)].map((one) => one.textContent!.replace(/\s+/g, ' ').trim());
  return { sheet, heard, text };
}

describe('the debrief', () => {
  test('has the word of this flight beside that of the last ones, and says of how many', async () => {
    const { text } = await shown({ known: KNOWN });
    expect(text('table.marks thead th')).toEqual(['mark', 'this flight', 'last 3 flights']);
    const hover = learner!.marks.find(({ id }) => id === 'hover')!;
    expect(text('table.marks tbody tr').find((row) => row.startsWith('hover'))).toBe(`hover ${hover.word} nearly`);
    expect(text('.of')[0]).toContain('the last three flights, all in this kit');
  });

  test('another flight stands in a column, its raw values beside those of this one', async () => {
    const { text } = await shown({
      compare: { ...DEBRIEF.compare, chosen: 'pilot:steady', name: 'steady', says: 'Simulated.', marks: steady!.marks },
    });
    expect(text('td.beside')).toEqual(steady!.marks.map(({ word }) => word));
    const distance = steady!.marks[1]!.parts.find(({ id }) => id === 'distance')!;
    expect(text('.mark')[1]).toContain(`steady: ${distance.raw.toFixed(2)} m.`);
  });

  test('what stands on the line stands beside it in words, with the values of the marks', async () => {
    const { text } = await shown();
    const [hover, stop] = ['hover', 'ascent'].map((id) =>
      learner!.marks
        .find((one) => one.id === id)!
        .parts.find((one) => one.id === 'distance')!
        .raw.toFixed(2),
    );
    expect(text('figcaption p')[0]).toMatch(
      /^Brackets above the line: the tasks, and how this flight of each was\. Positive: not marked \(from 0:00\), Descent: /,
    );
    for (const { id, word } of learner!.marks)
      expect(text('figcaption p')[0]!.toLowerCase()).toContain(`${id}: ${word} (`);
    const signs = text('.signs li').join(' ');
    expect(signs).toContain(`Typically ${hover} m off the 8 m asked for: that far from it lie the thin lines.`);
    expect(signs).toContain(`Typically ${stop} m off the 5 m asked for: that far from it lie the thin lines.`);
    const worst = Math.max(...DEBRIEF.line.gaps.map(({ metres }) => metres));
    expect(signs).toContain(`${worst.toFixed(1)} m too far up for 9 m/min; dashed: the steepest line allowed.`);
    expect(signs).toContain('Two strokes side by side: too fast there.');
    const { presses } = DEBRIEF.line;
    expect(presses).toBeGreaterThan(1);
    expect(signs).toContain(
      `Gas let in above the line, gas let out below it, as high as the litres: ${presses} presses.`,
    );
  });

  test('no number stands apart from its unit where a line of the lists ends', async () => {
    const moments = learner!.marks.flatMap(({ parts }) => parts.flatMap(({ atS }) => atS ?? []));
    const { sheet } = await shown({ moments });
    const says = [...sheet.querySelectorAll('.signs span, .rings span, .mark li span')].map((one) => one.textContent);
    expect(says.join(' ')).toMatch(/\d\u00a0m\/min/);
    for (const one of says) expect(one).not.toMatch(/\d (m|L|%|N|s)\b|\d\u00a0N s\b|\d %/);
  });

  test('a part says between which values its points go, whichever way is better', () => {
    expect(pointsScale({ good: 0.1, bad: 1.5, unit: 'm' })).toBe('full points up to 0.10 m, none from 1.5 m on');
    expect(pointsScale({ good: 100, bad: 0, unit: '%' })).toBe('full points from 100 %, none at 0 %');
    expect([80, 79.8, 79.96, 20.04, 79.9996, 80 + 1e-12].map((share) => amount(share, '%'))).toEqual([
      ...['80 %', '79.8 %', '79.96 %', '20.04 %', '79.9996 %', '80 %'],
    ]);
    expect(pointsScale({ good: null, bad: null, unit: '' })).toBe('');
  });

  test('each ring has a line with what it is about and the way there, numbered as on the line', async () => {
    const moments = learner!.marks
      .flatMap(({ parts }) => parts.filter(({ pointsLost, atS }) => pointsLost > 0 && atS !== null))
      .map(({ atS }) => atS!)
      .filter((atS, i, all) => all.indexOf(atS) === i)
      .sort((a, b) => a - b);
    expect(moments.length).toBeGreaterThan(1);
    const { text, sheet, heard } = await shown({ moments });
    const lines = text('.rings li');
    expect(lines).toHaveLength(moments.length);
    for (const [i, line] of lines.entries())
      expect(line).toMatch(new RegExp(`^${i + 1}\\w.*[.?] ${i + 1} see \\d+:\\d\\d$`));
    for (const button of sheet.querySelectorAll<HTMLButtonElement>('.rings .moment')) button.click();
    expect(heard).toEqual(moments.map((atS) => ({ kind: 'moment', atS })));
  });

  test('states what may be stated, with its question, and only asks the rest; each habit once, with its moments', async () => {
    const habits = [habit('kicks-while-heavy', 10), habit('wrong-way', 20), habit('kicks-while-heavy', 30)];
    const { text, sheet, heard } = await shown({ result: { ...learner!, habits } });
    const [stated, asked] = text('li.habit');
    expect(stated).toContain(`Gas went in for 3 s. ${HABIT_KINDS['kicks-while-heavy'].question}`);
    expect(asked).toMatch(/^A question: Which way were you moving/);
    expect(sheet.querySelectorAll('li.habit')).toHaveLength(2);
    const moments = sheet.querySelectorAll<HTMLButtonElement>('li.habit .moment');
    for (const button of moments) button.click();
    expect(heard).toEqual([10, 30, 20].map((atS) => ({ kind: 'moment', atS })));
  });

  test('the limits stand with their reasons, the lesson’s own as such; the next exercise with its own', async () => {
    const { text, sheet, heard } = await shown({ known: KNOWN });
    expect(text('.limits li')).toContain('2 m climbed above the rate (set by this lesson). A thick suit.');
    expect(text('.limits li')[0]).toContain('US Navy Diving Manual');
    expect(text('.next')[0]).toContain('Because of this.');
    sheet.querySelector<HTMLButtonElement>('.next button')!.click();
    expect(heard).toEqual([{ kind: 'lesson', id: 'one-breath' }]);
  });

  test('earlier flights stand with the word that was written about them, and those of another kit are counted only', async () => {
    const { text } = await shown({ known: KNOWN });
    expect(text('.earlier > li')).toHaveLength(4);
    expect(text('details .earlier > li')).toHaveLength(1);
    expect(text('.earlier .word')).toEqual(['“Breathe out first.”']);
    expect(text('section')[0]).toContain(
      '2 more flights were in another kit or with other tasks: they are not compared.',
    );
  });

  test('a simulated diver’s flight says so, and takes no word', async () => {
    const { text, sheet } = await shown({ flownBy: 'Presses too long.', known: { ...KNOWN, id: null } });
    expect(text('.flown-by')[0]).toBe("Flown by a simulated diver. Presses too long. It is nobody's result.");
    expect(sheet.querySelector('debrief-word')).toBeNull();
  });

  test('all gauges can be had again from the flight on after which they fade', async () => {
    const words = async (attempt: number) => (await shown({ attempt })).text('.row button');
    expect(await words(1)).not.toContain('again, with all gauges');
    document.body.replaceChildren();
    const { sheet, heard } = await shown({ attempt: 2 });
    const button = [...sheet.querySelectorAll('button')].find((one) => one.textContent!.includes('all gauges'));
    button!.click();
    expect(heard).toEqual([{ kind: 'all-gauges' }]);
  });

  test('the instructor’s word is kept after a pause, and not overwritten by what comes back meanwhile', async () => {
    vi.useFakeTimers();
    const { sheet, heard } = await shown({ known: KNOWN });
    const word = sheet.querySelector('debrief-word')!;
    await (word as unknown as { updateComplete: Promise<unknown> }).updateComplete;
    const box = word.querySelector('textarea')!;
    expect(box.value).toBe('Wait.');
    const write = (text: string) => {
      box.value = text;
      box.dispatchEvent(new Event('input'));
    };
    write('Wait for the');
    vi.advanceTimersByTime(800);
    expect(heard).toEqual([{ kind: 'debrief', ask: { do: 'word', word: 'Wait for the' } }]);
    write('Wait for the breath.');
    sheet.debrief = { ...DEBRIEF, known: { ...KNOWN, word: 'Wait for the', words: 'Kept in this browser.' } };
    await sheet.updateComplete;
    expect(box.value).toBe('Wait for the breath.');
    vi.advanceTimersByTime(800);
    expect(heard).toHaveLength(2);
    vi.useRealTimers();
  });

  test.each([
    ['wrong', { said: '7.0 m', right: false, off: '2.4 m deeper', within: '0.5 m' }, ': 2.4 m deeper.'],
    ['right', { said: '7.0 m', right: true, off: null, within: '0.5 m' }, ': as you said.'],
    [
      'near',
      { said: '7.0 m', right: true, off: '0.3 m deeper', within: '0.5 m' },
      ': 0.3 m deeper, near enough (within 0.5 m).',
    ],
    ['a wrong choice', { said: 'up', right: false, off: null, within: null }, '.'],
    ['passed over', { said: null, right: false, off: null, within: null }, '.'],
  ])('a prediction that was %s says how far off', (_, outcome, words) => {
    const whole: PredictionOutcome = { id: 'p', question: '', came: '', why: '', atS: 0, ...outcome };
    expect(howFar(whole)).toBe(words);
  });
});
