// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { LedgerBars } from '../../src/panels/ledger-bars.ts';
import type { Pulls } from '../../src/panels/readings.ts';

/** The bars of one moment on a page. */
async function shown(afloat: boolean, numbers: Pulls | null = null): Promise<string> {
  const bars = new LedgerBars();
  bars.up = [{ name: 'jacket', kg: 8.2, isGas: true, saidKg: 8.2 }];
  bars.down = [{ name: 'lead', kg: 8.7, isGas: false, saidKg: 8.7 }];
  bars.afloat = afloat;
  bars.said = numbers;
  document.body.append(bars);
  await bars.updateComplete;
  const said = bars.textContent.replace(/\s+/g, ' ');
  bars.remove();
  return said;
}

test('ledger-bars says a surplus of the moment under water, and none of who floats: it would be his bobbing', async () => {
  const under = await shown(false);
  expect(under).toContain('0.5 kg more down with this breath');
  expect(under).toMatch(/0\.5 kg down/);
  const afloat = await shown(true);
  expect(afloat).not.toMatch(/0\.5/);
  expect(afloat).toContain('balanced by what is out of the water');
});

test('ledger-bars writes the numbers of a sentence that stands elsewhere, and what it writes adds up', async () => {
  const pull = (name: string, kg: number, saidKg: number) => ({ name, kg, isGas: false, saidKg });
  const up = [pull('jacket', 8.14, 8.1), pull('lungs', 2.96, 2.9)];
  const said = await shown(false, { up, down: [pull('lead', 11.84, 11.8)] });
  expect(said).toContain('Up: jacket 8.1 kg, lungs 2.9 kg. Down: lead 11.8 kg. 0.8 kg more down');
  expect(said).toMatch(/0\.8 kg down/);
});
