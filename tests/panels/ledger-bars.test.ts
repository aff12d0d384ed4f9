// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { LedgerBars } from '../../src/panels/ledger-bars.ts';

/** The bars of one moment on a page. */
async function shown(afloat: boolean): Promise<string> {
  const bars = new LedgerBars();
  bars.up = [{ name: 'jacket', kg: 8.2, isGas: true }];
  bars.down = [{ name: 'lead', kg: 8.7, isGas: false }];
  bars.afloat = afloat;
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
