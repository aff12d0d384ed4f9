import { expect, test } from 'vitest';
import type { Setup } from '../../src/diver/index.ts';
import { writeRun } from '../../src/dive/file.ts';
import { openFile } from '../../src/app/files.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { secondOf } from '../../src/app/own-files.ts';
import { readySetup } from '../../src/app/setups.ts';
import type { KeptPair } from '../../src/store/index.ts';
import { readyRig } from '../dive/run-file-fixture.ts';

const PAIR: KeptPair = { difference: 'change:a hood', by: 'hands', own: null, words: '' };

test('secondOf() says who dives beside with the setup that his difference begins from, by its id too; nothing where nobody does', async () => {
  const pool = await readySetup('pool');
  const second = { difference: 'change:a hood', by: 'hands', first: pool, own: null };
  expect(await secondOf(PAIR, 'pool')).toEqual(second);
  expect(await secondOf(PAIR, pool)).toEqual(second);
  expect(await secondOf(null, pool)).toBeUndefined();
  expect(await secondOf(undefined, null)).toBeUndefined();
});

test('secondOf() leaves out what no setup file may hold, so that every dive that is saved can be opened', async () => {
  const pool = await readySetup('pool');
  const heavy = { ...pool, lead: [{ massKg: 900, place: 'belt', releasable: true }] } as Setup;
  expect(await secondOf({ ...PAIR, difference: 'own', own: heavy }, null)).toBeUndefined();
  expect((await secondOf(PAIR, heavy))?.first).toBeNull();
  const rig = readyRig('pool');
  const { dive } = new Flight(rig, afloatStart(rig));
  const bytes = writeRun(dive.run(), { name: 'Pool', endHash: dive.hash(), second: await secondOf(PAIR, heavy) });
  const opened = await openFile(new Blob([bytes as Uint8Array<ArrayBuffer>]));
  expect(opened).toMatchObject({ kind: 'run', second: { difference: 'change:a hood', first: null } });
});
