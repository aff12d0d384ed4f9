import { expect, test } from 'vitest';
import { LookDesk, type Bench } from '../../src/app/look-desk.ts';
import type { LookAnswer, LookRequest } from '../../src/app/look-work.ts';

/** Requests and answers are told apart by what is wanted. */
const request = (wanted: LookRequest['wanted']) => ({ wanted }) as LookRequest;
const answer = {} as LookAnswer;

function desk() {
  const begun: string[] = [];
  const done: string[] = [];
  let hired = 0;
  let failed = 0;
  let gone = 0;
  const bench: Bench = {
    postMessage: ({ wanted }) => begun.push(wanted),
    terminate: () => void gone++,
    onmessage: null,
    onerror: null,
  };
  const made = new LookDesk(
    () => {
      hired++;
      return bench;
    },
    (_, { wanted }) => done.push(wanted),
    () => failed++,
  );
  const finish = () => bench.onmessage!({ data: answer } as MessageEvent<LookAnswer>);
  const fail = () => bench.onerror!(new Event('error') as ErrorEvent);
  return { made, begun, done, finish, fail, counts: () => ({ hired, failed, gone }) };
}

test('LookDesk begins one look at a time and of those asked for meanwhile only the newest', () => {
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
  expect(counts()).toEqual({ hired: 1, failed: 0, gone: 0 });
});

test('LookDesk hires nobody before a look is asked for, and takes the next one after a failure', () => {
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
  // One that failed may never answer.
  expect(counts()).toEqual({ hired: 2, failed: 1, gone: 1 });
});
