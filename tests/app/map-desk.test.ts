import { expect, test } from 'vitest';
import { MapDesk, type Bench } from '../../src/app/map-desk.ts';
import type { MapAnswer, MapRequest } from '../../src/app/map-work.ts';

/** Requests and answers are told apart by what is asked across. */
const request = (across: MapRequest['across']) => ({ across }) as MapRequest;
const answer = {} as MapAnswer;

function desk() {
  const begun: string[] = [];
  const done: string[] = [];
  let hired = 0;
  let failed = 0;
  const bench: Bench = {
    postMessage: ({ across }) => begun.push(across),
    onmessage: null,
    onerror: null,
  };
  const made = new MapDesk(
    () => {
      hired++;
      return bench;
    },
    (_, { across }) => done.push(across),
    () => failed++,
  );
  const finish = () => bench.onmessage!({ data: answer } as MessageEvent<MapAnswer>);
  const fail = () => bench.onerror!(new Event('error') as ErrorEvent);
  return { made, begun, done, finish, fail, counts: () => ({ hired, failed }) };
}

test('MapDesk begins one map at a time and of those asked for meanwhile only the newest', () => {
  const { made, begun, done, finish, counts } = desk();
  made.ask(request('gas'));
  made.ask(request('lead'));
  made.ask(request('speed'));
  expect(begun).toEqual(['gas']);
  finish();
  expect(begun).toEqual(['gas', 'speed']);
  finish();
  expect(done).toEqual(['gas', 'speed']);
  expect(begun).toEqual(['gas', 'speed']);
  expect(counts()).toEqual({ hired: 1, failed: 0 });
});

test('MapDesk hires nobody before a map is asked for, and takes the next one after a failure', () => {
  const { made, begun, fail, finish, done, counts } = desk();
  expect(counts().hired).toBe(0);
  made.ask(request('gas'));
  made.ask(request('lead'));
  fail();
  expect(counts().failed).toBe(1);
  expect(begun).toEqual(['gas']);
  made.ask(request('speed'));
  finish();
  expect(done).toEqual(['speed']);
});
