import { describe, expect, test } from 'vitest';
import { TICKS_PER_S } from '../../src/dive/index.ts';
import { noteOf, stillSaid, type Said } from '../../src/app/kept-note.ts';

const dive = (tick: number) => ({ tick }) as Extract<Said, { kind: 'back' }>['dive'];
const kept = (of: object = {}) =>
  ({ lessonId: null, run: { ticks: 300 }, ...of }) as Extract<Said, { kind: 'back' }>['kept'];
const keeping = {} as Extract<Said, { kind: 'offer' }>['keeping'];
const touched = () => false;
const untouched = () => true;

describe('stillSaid()', () => {
  test('a dive is offered until somebody does something', () => {
    const said: Said = { kind: 'offer', kept: kept(), keeping };
    expect(stillSaid(said, dive(9), untouched)).toBe(true);
    expect(stillSaid(said, dive(0), touched)).toBe(false);
  });

  test('that a dive is back is said as long as it stands as it was', () => {
    const back = dive(300);
    const said: Said = { kind: 'back', kept: kept(), dive: back, tick: 300, lesson: false, same: true };
    expect(stillSaid(said, back, touched)).toBe(true);
    expect(stillSaid(said, dive(300), touched)).toBe(false);
    expect(stillSaid({ ...said, tick: 299 }, back, touched)).toBe(false);
  });

  test('the dive before is spoken of for ten seconds of the next', () => {
    const next = dive(100);
    const said: Said = { kind: 'left', id: 4, dive: next, fromTick: 100, leftTick: 900 };
    const after = (ticks: number) => stillSaid(said, Object.assign(next, { tick: 100 + ticks }), touched);
    expect([0, 10 * TICKS_PER_S, 10 * TICKS_PER_S + 1].map(after)).toEqual([true, true, false]);
    expect(noteOf(said, (ticks) => `${ticks}`).words).toContain('as it was at 900');
    expect(stillSaid(said, dive(100), touched)).toBe(false);
  });
});

describe('noteOf()', () => {
  const words = (said: Said) => noteOf(said, (ticks) => `tick ${ticks}`).words;

  test('says what was damaged, and that the model changed, only where it is so', () => {
    const back: Said = { kind: 'back', kept: kept(), dive: dive(300), tick: 300, lesson: false, same: true };
    expect(words(back)).toBe('Your dive is back, as it was at tick 300.');
    expect(words({ ...back, same: false })).toMatch(/300\. It does not end as it did/);
    const damaged = kept({ beside: 'damaged', pair: 'damaged' });
    expect(words({ ...back, kept: damaged })).toMatch(/bookmarks were damaged.*second diver was damaged/);
  });

  test('a lesson that could only come back as a dive is called a dive; one that is offered is a lesson', () => {
    const lesson = kept({ lessonId: 'hover' });
    const back: Said = { kind: 'back', kept: lesson, dive: dive(300), tick: 300, lesson: false, same: true };
    expect(words(back)).toMatch(/^Your dive is back/);
    expect(words({ kind: 'offer', kept: lesson, keeping })).toMatch(/^Your last lesson is kept/);
  });
});
