// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { ledger, netForceN } from '../../src/diver/index.ts';
import { startState } from '../../src/dive/index.ts';
import { pullKg } from '../../src/panels/index.ts';
import { PartsCard } from '../../src/panels/parts-card.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';

const EXAMPLE_RIG = weighed(EXAMPLE);

test('every part of the ledger stands in the table; the sum is the net force', async () => {
  const state = startState(EXAMPLE_RIG, { depthM: 10, jacketM3: 2e-3 });
  const card = new PartsCard();
  card.parts = ledger(EXAMPLE_RIG, state).map(({ part, buoyancyN, weightN }) => ({
    part,
    upN: buoyancyN,
    downN: weightN,
  }));
  document.body.append(card);
  await card.updateComplete;
  const cells = [...card.querySelectorAll('tbody tr')].map((line) =>
    [...line.children].map((cell) => cell.textContent.trim()),
  );
  expect(cells).toHaveLength(card.parts.length);
  expect(cells.map(([name]) => name)).toEqual(expect.arrayContaining(['body', 'lungs', 'suit', 'gas in the jacket']));
  const numberOf = (text: string) => Number(text.replace('\u2212', '-'));
  const sums = [...card.querySelectorAll('tfoot td')].map((cell) => numberOf(cell.textContent));
  // What is written in a column adds up to what is written under it.
  for (const [i, sum] of sums.entries())
    expect(cells.reduce((total, line) => total + numberOf(line[i + 1]!), 0)).toBeCloseTo(sum, 9);
  const sum = card.querySelector('tfoot td:last-child')!.textContent.replace('\u2212', '-');
  expect(Number(sum)).toBeCloseTo(pullKg(netForceN(EXAMPLE_RIG, state)), 2);
});
