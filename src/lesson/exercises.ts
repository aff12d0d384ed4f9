import type { HabitId } from './habit-kinds.ts';
import type { Belief } from './lesson.ts';

/** What took points, or was seen, and the lesson that trains the other way. Practice, no source. */
export interface Training {
  /** What was seen, as the second half of a sentence: gas went in and out again. */
  readonly seen: string;
  /** Ids of lessons, the fitting one first. */
  readonly lessons: readonly string[];
  /** What they train, after their title: trains short presses. */
  readonly trains: string;
}

/** By the part of a mark that cost most; parts of one name in two marks have the mark before them. */
export const PART_TRAINING: Readonly<Record<string, Training>> = {
  'gas-to-and-fro': {
    seen: 'gas went in and out again',
    lessons: ['coarse-and-fine', 'one-breath'],
    trains: 'short presses, and the breath for the rest',
  },
  distance: {
    seen: 'the depth was not held',
    lessons: ['hover', 'hilltop'],
    trains: 'staying on the breath alone',
  },
  fins: {
    seen: 'fins carried you, or braked',
    lessons: ['kick-test', 'hover'],
    trains: 'stopping the fins and seeing what you weigh',
  },
  balance: {
    seen: 'lungs or fins carried what gas should',
    lessons: ['coarse-and-fine', 'surface-check'],
    trains: 'gas that lets the breath end in its middle',
  },
  'descent/peak-rate': {
    seen: 'you sank faster than was asked for',
    lessons: ['descent', 'posture'],
    trains: 'gas before it is needed',
  },
  'ascent/peak-rate': {
    seen: 'you came up too fast',
    lessons: ['last-five-metres', 'ascent-with-stop'],
    trains: 'taking time where gas grows fastest',
  },
  pace: {
    seen: 'the way up took long',
    lessons: ['ascent-with-stop', 'last-five-metres'],
    trains: 'coming up at the rate that is asked for',
  },
  'breath-still': {
    seen: 'your breath stood still',
    lessons: ['breath-reach', 'hover'],
    trains: 'trimming with a breath that goes on',
  },
  'excess-climb': {
    seen: 'you climbed above the rate',
    lessons: ['ascent-with-stop', 'last-five-metres'],
    trains: 'gas out before it lifts you',
  },
  bottom: {
    seen: 'the bottom stopped you',
    lessons: ['descent', 'one-breath'],
    trains: 'gas before it is needed',
  },
  'surfaced-early': {
    seen: 'the stop was not kept to its end',
    lessons: ['ascent-with-stop', 'last-five-metres'],
    trains: 'arriving slowly and staying',
  },
};

/** Parts of a mark that mean the same as another one. */
export const SAME_PART: Readonly<Record<string, string>> = {
  close: 'distance',
  'in-place': 'distance',
  'fins-in-hold': 'fins',
  fast: 'ascent/peak-rate',
};

/** By a habit that is stated; those that are only asked after prove nothing. */
export const HABIT_TRAINING: Readonly<Partial<Record<HabitId, Training>>> = {
  'no-breath': {
    seen: 'you were off the depth and the breath did nothing',
    lessons: ['breath-reach', 'hover'],
    trains: 'staying on the breath alone',
  },
  'presses-until-it-moves': {
    seen: 'you pressed until it moved',
    lessons: ['coarse-and-fine', 'one-breath'],
    trains: 'short presses, and waiting',
  },
  'stop-and-go': {
    seen: 'you rose and sank by turns',
    lessons: ['ascent-with-stop', 'last-five-metres'],
    trains: 'gas out before it lifts you',
  },
  'kicks-while-heavy': {
    seen: 'fins carried your weight',
    lessons: ['kick-test', 'surface-check'],
    trains: 'stopping the fins and seeing what you weigh',
  },
  'vents-late': {
    seen: 'gas went out late on the way up',
    lessons: ['ascent-with-stop', 'last-five-metres'],
    trains: 'gas out before it lifts you',
  },
  'all-vented-at-once': {
    seen: 'all the gas went out at the top',
    lessons: ['descent', 'posture'],
    trains: 'a descent with gas in time',
  },
  'shot-to-the-surface': {
    seen: 'you came to the surface too fast or too soon',
    lessons: ['last-five-metres', 'ascent-with-stop'],
    trains: 'taking time where gas grows fastest',
  },
};

/** What a belief is about, after "asks": whether neutral keeps itself. */
export const BELIEF_ASKS: Readonly<Record<Belief, string>> = {
  'heavy-sinks': 'what decides whether a thing floats',
  'shape-floats': 'what shape changes and what it does not',
  'more-water': 'what more water under you changes',
  'finds-its-level': 'where a thing that is let go comes to rest',
  'pressed-down': 'what pressure does to a body',
  'neutral-place': 'whether neutral at one depth is neutral at another',
  'neutral-holds': 'whether neutral keeps itself',
  'linear-gas': 'where gas changes most for a metre',
  'lead-is-safe': 'what more lead costs',
  'jacket-lifts': 'what begins an ascent',
  'breath-now': 'how soon a breath answers',
  'level-is-neutral': 'whether swimming level means neutral',
  'suit-constant': 'whether a suit lifts the same everywhere',
  'breath-always': 'what a breath does on another apparatus',
  'my-number': 'what changes the lead that is right',
};
