import type { CDPSession, Locator, Page } from 'playwright';
import { expect } from 'vitest';
import { pass } from './made-time.ts';

/* A dive that is flown on the page, by what stands on it and by what a person has: keys, or one finger. */

export const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

export const named = (page: Page, name: string) => page.getByRole('button', { name });

/** What a person at the screen reads: depth in metres, speed in metres a minute, down positive, kilograms light. */
export interface Seen {
  readonly title: string;
  readonly depthM: number;
  readonly mpmin: number;
  readonly lightKg: number;
  readonly asked: boolean;
  readonly debriefed: boolean;
}

export async function read(page: Page): Promise<Seen> {
  const { title, lane, asked, debriefed } = await page.evaluate(() => ({
    title: document.querySelector('title-bar h1')?.textContent ?? '',
    lane: document.querySelector('lane-numbers')?.textContent ?? '',
    asked: document.querySelector('question-sheet section') !== null,
    debriefed: document.querySelector('debrief-sheet section') !== null,
  }));
  const number = (found: RegExpMatchArray | null) => Number(found?.[1] ?? 0);
  const mpmin = number(lane.match(/(?:rising|sinking)\s+(\d+)/)) * (lane.includes('rising') ? -1 : 1);
  const lightKg = number(lane.match(/(?:light|heavy)\s+([\d.]+)/)) * (lane.includes('heavy') ? -1 : 1);
  return { title: title.trim(), depthM: number(lane.match(/([\d.]+) m/)), mpmin, lightKg, asked, debriefed };
}

/** Acts of the deck that last as long as they are held, with their usual keys. */
const HELD = { vent: 'KeyK', add: 'KeyI', in: 'KeyW', out: 'KeyS' } as const;
type HeldAct = keyof typeof HELD;

/** What the diver is flown with. */
export interface Hands {
  down(act: HeldAct): Promise<void>;
  up(act: HeldAct): Promise<void>;
  push(button: Locator): Promise<void>;
  /** Seconds of the dive for each second that passes. */
  readonly speed: number;
}

/** Keys alone. */
export const keyboard = (page: Page, speed: number): Hands => ({
  speed,
  down: (act) => page.keyboard.down(HELD[act]),
  up: (act) => page.keyboard.up(HELD[act]),
  async push(button) {
    await button.focus();
    await page.keyboard.press('Enter');
  },
});

/** One finger alone. */
export const finger = (page: Page, session: CDPSession): Hands => ({
  speed: 1,
  down: async (act) => touch(session, 'touchStart', await middle(page, act)),
  up: () => touch(session, 'touchEnd'),
  push: (button) => button.tap(),
});

interface Point {
  readonly x: number;
  readonly y: number;
  readonly id: number;
}

/** Where a finger meets a button of the deck. */
export async function middle(page: Page, act: string, id = 1): Promise<Point> {
  const box = (await page.locator(`[data-act=${act}]`).boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, id };
}

export async function touch(
  session: CDPSession,
  type: 'touchStart' | 'touchEnd' | 'touchCancel',
  ...touchPoints: Point[]
): Promise<void> {
  await session.send('Input.dispatchTouchEvent', { type, touchPoints });
}

/** From the first screen to the first question. */
export async function begin(
  page: Page,
  push: Hands['push'],
  by: readonly string[] = ['begin First dive'],
): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  for (const name of ['I have read this', 'learn in order', ...by]) await push(named(page, name));
  await page.waitForSelector('question-sheet section');
  await shown(page, false);
}

/** Shows the picture or not. It is drawn all the same; a machine without a graphics card spends most of its time on showing it. */
export const shown = (page: Page, isShown: boolean) =>
  page.locator('#stage canvas').evaluate((picture, isShown) => {
    (picture as HTMLElement).style.visibility = isShown ? '' : 'hidden';
  }, isShown);

/** Lets so much of the dive pass, seconds. */
export const dive = (page: Page, { speed }: Hands, seconds: number) => pass(page, seconds / speed, 50 / speed);

/** Holds a button for a moment of the dive. */
export async function press(page: Page, hands: Hands, act: HeldAct, ms: number): Promise<void> {
  await hands.down(act);
  await dive(page, hands, ms / 1000);
  await hands.up(act);
}

/** Answers the question that is asked, with the first choice where there are some. */
export async function answer(page: Page, hands: Hands): Promise<void> {
  const choice = page.locator('.option').first();
  if ((await choice.count()) > 0) await hands.push(choice);
  await hands.push(page.locator('question-sheet .main'));
  await expect
    .poll(async () => {
      await dive(page, hands, 0.1);
      return page.locator('question-sheet section').count();
    })
    .toBe(0);
}
