import type { Page } from 'playwright';
import {
  closeLedges,
  forcesOverlay,
  ledgesOverlay,
  madeUpMap,
  mapOverlay,
  reachAbout,
} from '../../stage/insight-views.ts';
import type { StageView } from '../../../src/stage/index.ts';
import type { Harness } from './main.ts';

declare const harness: Harness;

const about = 8;
/** Everything that can lie over the water, about a diver at 8 m. */
export const overlayViews: Readonly<Record<string, Partial<StageView>>> = {
  reach: { ...reachAbout(about) },
  forces: { ...reachAbout(about), overlay: forcesOverlay(8, 14, 30) },
  ledges: { metresShown: 14, limitTaught: true, overlay: ledgesOverlay(20, about) },
  close: { metresShown: 14, overlay: closeLedges(20, about) },
  map: { metresShown: 20, ...reachAbout(about), overlay: mapOverlay([madeUpMap(5e-3, 8), madeUpMap(8e-3, 11)]) },
};

/** Draws a view until what lies over the water has come and been drawn. */
export async function showWith(page: Page, wish: Partial<StageView>): Promise<void> {
  await page.evaluate((wish) => harness.show('hover', 20, wish), wish);
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => name.includes('overlays')),
  );
  await page.evaluate(
    (wish) =>
      new Promise<void>((done) =>
        setTimeout(() => {
          harness.again(wish);
          done();
        }, 50),
      ),
    wish,
  );
}
