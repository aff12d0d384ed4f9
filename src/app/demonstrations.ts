import type { AskStep, Demonstration } from './demonstration.ts';

const WHERE_TO: AskStep['options'] = [
  { id: 'back', words: 'Back to where he was neutral' },
  { id: 'stays', words: 'Where he is now' },
  { id: 'up', words: 'Higher, and going on up' },
  { id: 'down', words: 'Deeper, and going on down' },
];

/** What can be shown to a class with next and back alone. Divers are our ready setups; every answer comes out of the run. */
export const DEMONSTRATIONS: readonly Demonstration[] = [
  {
    id: 'hilltop',
    title: 'The hilltop',
    about: 'Neutral at 10 m, then 30 cm higher, and nobody acts.',
    steps: [
      {
        kind: 'begin',
        setup: 'temperate-sea',
        moreLeadKg: 0,
        atM: 9.7,
        neutralAtM: 10,
        words: 'He was neutral at 10 m. A wave has lifted him by 30 cm.',
        notes: 'Everything is right: lead, gas, breath. Nothing will be pressed.',
      },
      {
        kind: 'ask',
        question: 'Nobody acts, and he goes on breathing. Where is he in 25 seconds?',
        options: WHERE_TO,
        truth: 'way',
        notes: 'Hands up for each letter, then count.',
      },
      { kind: 'run', words: 'Nobody acts.', untilM: null, atMostS: 25, notes: 'Let them watch the slope: it grows.' },
      {
        kind: 'say',
        words: '{right}: 30 cm became {off} in {took} s',
        look: 'hilltop',
        notes: 'Higher up the gas is larger, and lifts more. Neutral is the top of a hill.',
      },
      {
        kind: 'begin',
        setup: 'temperate-sea',
        moreLeadKg: 0,
        atM: 10.3,
        neutralAtM: 10,
        words: 'The same diver, 30 cm deeper than neutral.',
        notes: 'The same hill, the other side.',
      },
      {
        kind: 'ask',
        question: 'And now, 30 cm too deep? Where is he in 25 seconds?',
        options: WHERE_TO,
        truth: 'way',
        notes: 'Many who were right before now say: he comes back up.',
      },
      { kind: 'run', words: 'Nobody acts.', untilM: null, atMostS: 25, notes: 'Nobody touches anything.' },
      {
        kind: 'say',
        words: '{right}: 30 cm became {off} in {took} s. Who stays, stays by acting.',
        look: 'hilltop',
        notes: 'Small and early: a breath now saves a press later.',
      },
    ],
  },
  {
    id: 'two-kilograms',
    title: 'Two kilograms too many',
    about:
      'The same diver twice, side by side and both neutral; the second carries two kilograms more and the gas for it.',
    steps: [
      {
        kind: 'begin',
        setup: 'temperate-sea',
        moreLeadKg: 0,
        atM: 9.5,
        neutralAtM: 10,
        keepGas: 'gasFirst',
        beside: {
          moreLeadKg: 2,
          words: '2 kg more lead, and gas for it',
          back: '2 kg less lead, and less gas',
          keepGas: 'gasSecond',
        },
        words:
          'Two kilograms more need {gasSecond} in the jacket, not {gasFirst}. Both are neutral at 10 m, and half a metre above it.',
        notes: 'One still covers the other. Two kilograms want nearly two litres more, at every depth.',
      },
      {
        kind: 'ask',
        question: 'Nobody acts. When is the one with two kilograms more at 7 m?',
        options: [
          { id: 'sooner', words: 'Before the other' },
          { id: 'same', words: 'With the other' },
          { id: 'later', words: 'After him: there is more mass to move' },
          { id: 'never', words: 'Never: more lead holds him down' },
        ],
        truth: 'beside-first',
        notes: 'Hands up for each letter, then count.',
      },
      {
        kind: 'run',
        words: 'Solid: weighed right. Dash and dot: two kilograms more.',
        untilM: 7,
        atMostS: 60,
        notes: 'Watch the bracket between them: it grows, and grows faster.',
      },
      {
        kind: 'say',
        words: '{right}: at 7 m after {second} s, the other after {first} s. Now {apart} lie between them.',
        notes: 'More lead, more gas to carry it, a steeper hill. He can be neutral, and works harder for it.',
      },
    ],
  },
  {
    id: 'runaway-descent',
    title: 'Runaway descent',
    about: '7 mm two-piece, four kilograms too many, jacket empty, let go at 2\u00a0m.',
    steps: [
      {
        kind: 'begin',
        setup: 'two-piece-heavy',
        moreLeadKg: 0,
        atM: 2,
        neutralAtM: null,
        words: 'Four kilograms too many, thick suit, jacket empty. He lets go at 2 m.',
        notes: 'The dangerous one that no pool may show. The run freezes by itself at 10 m.',
      },
      { kind: 'run', words: 'He lets go, and nobody acts.', untilM: 10, atMostS: 60, notes: 'Say nothing yet.' },
      {
        kind: 'ask',
        question: 'Ten metres, and still nobody acts. What does the sinking do from here to 20 m?',
        options: [
          { id: 'faster', words: 'It gets faster still' },
          { id: 'steady', words: 'It stays as it is' },
          { id: 'slower', words: 'It slows: the water brakes him' },
          { id: 'stops', words: 'It ends by itself' },
        ],
        truth: 'speed',
        notes: 'Hands up for each letter, then count.',
      },
      { kind: 'run', words: 'Still nobody acts.', untilM: 20, atMostS: 60, notes: 'The suit goes on shrinking.' },
      {
        kind: 'say',
        words: '{right}: {asked} at 10 m, {speed} at 20 m. Each metre makes it harder to stop.',
        notes: 'Each metre takes lift from the suit. Every second of waiting costs half a metre.',
      },
      {
        kind: 'rewind',
        toS: 5,
        words: 'Back at the fifth second. What still stops him here?',
        look: 'stops',
        notes: 'Somebody takes the keys; next lets time run on.',
      },
      {
        kind: 'run',
        words: 'Take over: stop him.',
        untilM: null,
        atMostS: 90,
        notes: 'Early, short presses; then the breath.',
      },
    ],
  },
];
