// @vitest-environment happy-dom
import { afterEach, expect, test } from 'vitest';
import { LeadRelease } from '../../src/panels/lead-release.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

async function clicked(given: Partial<LeadRelease>): Promise<Wish[]> {
  const release = Object.assign(new LeadRelease(), { pieces: 2 }, given);
  const heard: Wish[] = [];
  release.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(release);
  await release.updateComplete;
  release.querySelector('button')!.dispatchEvent(new MouseEvent('click', { detail: 1, bubbles: true }));
  return heard;
}

afterEach(() => document.body.replaceChildren());

test('a touch alone arms nothing; for those who cannot hold it does', async () => {
  expect(await clicked({})).toEqual([]);
  expect(await clicked({ toggles: true })).toEqual([{ kind: 'arm', armed: true }]);
});

test('a second touch on the same button lets nothing go: that is confirmed elsewhere', async () => {
  expect(await clicked({ toggles: true, armed: true })).toEqual([]);
});
