import { expect, test } from 'vitest';
import { practiceWords } from '../../src/app/practice-words.ts';
import { rigOf } from '../../src/diver/index.ts';
import { Recording, startState } from '../../src/dive/index.ts';
import { readySetup } from '../../src/app/setups.ts';

const rig = rigOf(await readySetup('first-dive'));

/** A recording of depths, ten a second. */
function recordingOf(depthsM: readonly number[]): Recording {
  const state = startState(rig, { depthM: 8 });
  const recording = new Recording(rig, state.tick);
  depthsM.forEach((depthM, row) => recording.note({ ...state, depthM, tick: state.tick + row * 12 }));
  return recording;
}

const last = (recording: Recording) => recording.startTick + (recording.rows - 1) * 12;

test('practiceWords() asks the first question until he is under, and says what to do on the ground', () => {
  const recording = recordingOf([0.4]);
  expect(practiceWords('afloat', recording, 0)).toMatch(/Let gas out/);
  expect(practiceWords('on the bottom', recording, 0)).toMatch(/^You lie on the bottom/);
  expect(practiceWords('under', recording, 0)).toMatch(/^Be neutral/);
});

test('practiceWords() calls twenty seconds within half a metre a hover, and says how long in steps of five', () => {
  const still = (seconds: number) => Array.from({ length: seconds * 10 + 1 }, () => 8);
  const words = (recording: Recording, tick = last(recording)) => practiceWords('under', recording, tick);
  expect(words(recordingOf(still(19.9)))).toMatch(/^Be neutral/);
  expect(words(recordingOf(still(20)))).toMatch(/^You hover: 20 s/);
  expect(words(recordingOf(still(34)))).toMatch(/^You hover: 30 s/);
  const came = recordingOf([7.4, ...still(22)]);
  expect(words(came)).toMatch(/^You hover: 20 s/);
  expect(words(came, came.startTick + 12 * 100), 'an earlier moment').toMatch(/^Be neutral/);
  expect(words(recordingOf([...still(30), 8.6]))).toMatch(/^Be neutral/);
});
