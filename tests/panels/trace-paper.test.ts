import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { TraceData } from '../../src/panels/trace-data.ts';
import { lanesOf, paperRange, rounded, yIn } from '../../src/panels/trace-lanes.ts';
import { momentAt, xAt } from '../../src/panels/trace-paper.ts';
import { endsOf, sceneOf } from '../../src/panels/trace-scene.ts';
import { tableRows } from '../../src/panels/trace-table.ts';
import type { TracesView } from '../../src/panels/trace-view.ts';
import { WHOLE, edgesOf, readAt, timeTicks, zoomed, type TraceWindow } from '../../src/panels/trace-window.ts';
import { momentText, rowWords } from '../../src/panels/trace-words.ts';
import { flownView } from './flown-traces.ts';

let view: TracesView;
let data: TraceData;
const page = { size: [1084, 200] as const, pageHeightPx: 720, oneAt: 0 };

beforeAll(() => {
  view = flownView();
  data = new TraceData();
  data.follow(view, 'metric');
});

/** Any row of presses. */
const presses = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('zoom' as const), closer: fc.boolean() }),
    fc.record({ kind: fc.constant('read' as const), s: fc.double({ min: -50, max: 900, noNaN: true }) }),
    fc.record({ kind: fc.constant('follow' as const) }),
  ),
  { maxLength: 30 },
);

test('whatever is pressed, the window lies in the dive and the reading line in the window', () => {
  fc.assert(
    fc.property(presses, fc.double({ min: 0, max: 800, noNaN: true }), (all, endS) => {
      let window: TraceWindow = WHOLE;
      for (const press of all) {
        if (press.kind === 'zoom') window = zoomed(window, press.closer, 0, endS);
        else window = readAt(window, press.kind === 'read' ? press.s : null, 0, endS);
        const [left, right] = edgesOf(window, 0, endS);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(right).toBeGreaterThan(left);
        if (window.readS === null) expect(right).toBeGreaterThanOrEqual(endS - 1e-9);
        else {
          expect(window.readS).toBeGreaterThanOrEqual(left - 1e-9);
          expect(window.readS).toBeLessThanOrEqual(right + 1e-9);
        }
      }
    }),
  );
});

test('looking closer keeps what is read at its place on the paper', () => {
  const wide = readAt({ ...WHOLE, spanS: 300 }, 500, 0, 800);
  const close = zoomed(wide, true, 0, 800);
  const share = (window: TraceWindow) => {
    const [left, right] = edgesOf(window, 0, 800);
    return (window.readS! - left) / (right - left);
  };
  expect(close.spanS).toBe(120);
  expect(share(close)).toBeCloseTo(share(wide), 9);
});

test('rounded() ends hold what is between them and add less than what was there', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: 0.01, max: 1e4, noNaN: true }),
      (low, span) => {
        const [from, to] = rounded(low, low + span);
        // What is off by a billionth of the paper, or by its twelfth digit, is on its edge.
        const hair = 1e-9 * (to - from) + 1e-12 * Math.abs(low);
        expect(from).toBeLessThanOrEqual(low + hair);
        expect(to).toBeGreaterThanOrEqual(low + span - hair);
        expect(to - from).toBeLessThan(span * 2 + hair);
      },
    ),
    { numRuns: 10_000 },
  );
});

test('lanes lie below each other, hold all their values, and the plot puts a value where the words say', () => {
  const [top, height] = [20, 160];
  const lanes = lanesOf(view.kinds, data, 'metric', { top, height });
  lanes.forEach((lane, i) => {
    expect(lane.top).toBeGreaterThan(i === 0 ? top : lanes[i - 1]!.bottom);
    const [foot, head] = paperRange(lane, top, height);
    for (let row = 0; row < data.rows; row++) {
      const value = data.valueOf(lane.kind.id, row);
      const y = yIn(lane, value);
      expect(y).toBeGreaterThanOrEqual(lane.top - 1e-6);
      expect(y).toBeLessThanOrEqual(lane.bottom + 1e-6);
      const share = (value - foot) / (head - foot);
      expect(lane.kind.down ? top + share * height : top + height - share * height).toBeCloseTo(y, 6);
    }
  });
  expect(lanes.at(-1)!.bottom).toBeLessThan(top + height);
});

test('a moment stands where the pointer finds it again', () => {
  const { paper, edges } = sceneOf(view, data, WHOLE, page);
  for (const s of [edges[0], 33.3, 71.9, edges[1]])
    expect(momentAt(paper, edges, xAt(paper, edges, s))).toBeCloseTo(s, 9);
});

test('words of events do not lie on each other and stay on the paper', () => {
  const [from, to] = endsOf(data);
  const many = Array.from({ length: 300 }, (_, i) => ({
    tick: Math.round((from + ((to - from) * i) / 300) * 120),
    kind: i % 2 ? ('head-out' as const) : ('bottom-touched' as const),
  }));
  const { marks, paper } = sceneOf({ ...view, events: many }, data, WHOLE, page);
  const words = marks.flatMap((mark) => (mark.kind === 'text' && mark.y < paper.top ? [mark] : []));
  expect(words.length).toBeGreaterThan(3);
  words.forEach((mark, i) => {
    const half = mark.words.length * mark.px * 0.26;
    const before = words[i - 1];
    if (before) expect(mark.x - half).toBeGreaterThan(before.x + before.words.length * before.px * 0.26);
    expect(mark.x + half).toBeLessThanOrEqual(paper.right + 1);
  });
});

test('a narrow or low paper shows one trace, any in turn; a class sees names without numbers until somebody reads', () => {
  const small = { ...page, size: [360, 110] as const };
  expect(sceneOf(view, data, WHOLE, page).one).toBeNull();
  expect(sceneOf(view, data, WHOLE, { ...page, size: [1084, 60] }).one?.id).toBe('depth');
  expect([0, 1, 5, 6].map((oneAt) => sceneOf(view, data, WHOLE, { ...small, oneAt }).one?.id)).toEqual([
    'depth',
    'speed',
    'cylinder',
    'depth',
  ]);
  const bold = (window: TraceWindow) =>
    sceneOf({ ...view, projector: true }, data, window, { ...page, size: [1500, 400] }).marks.flatMap((mark) =>
      mark.kind === 'text' && mark.bold ? [mark.words] : [],
    );
  expect(bold(WHOLE)).toEqual(['depth', 'speed', 'force', 'jacket']);
  expect(bold(readAt(WHOLE, 60, ...endsOf(data))).join()).toMatch(/\d m.*1:00\.0/);
});

test('what is said of a row is what was recorded there', () => {
  const row = data.rowAt(100);
  const { depthM, speedMps } = view.recording.row(row);
  const said = rowWords(data, row, { ...view, events: [] });
  expect(said).toMatch(/^1:40\.0: /);
  expect(said).toContain(`depth ${depthM.toFixed(1)} m`);
  expect(said).toContain(Math.abs(speedMps) * 60 < 0.5 ? 'still' : speedMps > 0 ? 'sinking' : 'rising');
  expect(momentText(599.96)).toBe('10:00.0');
});

test('the table has at most some sixty even rows and every row in which something happened', () => {
  const rows = tableRows(data, view.events, edgesOf(WHOLE, ...endsOf(data)));
  expect(rows.length).toBeLessThanOrEqual(62 + view.events.length);
  for (const { tick } of view.events) expect(rows).toContain(Math.ceil(tick / 12));
  expect(timeTicks([0, 95], 10)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
});
