import { TICKS_PER_CHANGE, TICKS_PER_S, commonTick, type Dive } from '../dive/index.ts';

/** Letters of the knots: so many lines are kept beside the one that is flown. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;

/** A line that is not flown now: what came, or would have come, another way. */
export interface OtherLine {
  readonly letter: string;
  readonly name: string;
  readonly dive: Dive;
  /** Where it parts from the line that is flown. */
  readonly knotTick: number;
  readonly shown: boolean;
  /** Which leaving it was, counted from 1. */
  readonly leftAs: number;
  /** Its bookmarks beyond the knot: they come back with it. */
  readonly later: readonly Bookmark[];
}

/** A numbered moment on the line. */
export interface Bookmark {
  readonly number: number;
  readonly tick: number;
  /** Empty until it was given one. */
  readonly name: string;
}

/** Most bookmarks on one line: each has a digit. */
const MOST_MARKS = 9;

/** The lines of one dive: the others beside the one that is flown, its name, and the bookmarks on it. */
export class Lines {
  #others: readonly OtherLine[] = [];
  #marks: readonly Bookmark[] = [];
  /** Name of the line that is flown; empty until it was given one. */
  name = '';

  /** The lines as they were kept. */
  static of(name: string, others: readonly OtherLine[], marks: readonly Bookmark[]): Lines {
    const lines = new Lines();
    lines.name = name;
    lines.#marks = marks;
    lines.#keep(others);
    return lines;
  }

  /** In the order of their letters. */
  get others(): readonly OtherLine[] {
    return this.#others;
  }

  /** In the order of time. */
  get marks(): readonly Bookmark[] {
    return this.#marks;
  }

  /**
   * The line that is flown is left at a tick for another that leaves it there. A fifth takes the letter of the one left longest ago.
   * @returns the line that had to go for it, or null
   */
  leave(dive: Dive, tick: number): OtherLine | null {
    const free = LETTERS.find((letter) => !this.#others.some((line) => line.letter === letter));
    const gone = free ? null : this.#oldest();
    const kept = this.#others.filter((line) => line !== gone);
    const letter = free ?? gone!.letter;
    const left = {
      ...{ letter, name: this.name || endWords(dive), dive, knotTick: tick, shown: true },
      ...{ leftAs: this.#nextLeaving(), later: this.#marksAfter(tick) },
    };
    this.#keep([...kept.map((line) => ({ ...line, knotTick: Math.min(line.knotTick, tick) })), left]);
    this.name = '';
    this.#cutMarks(tick);
    return gone;
  }

  /** The line that is flown was changed from some tick on, as by going back: knots lie where the lines part now. */
  changed(dive: Dive): void {
    this.#keep(
      this.#others.flatMap((line) => {
        const common = commonTick(dive, line.dive);
        return common === null ? [] : [{ ...line, knotTick: Math.min(line.knotTick, common) }];
      }),
    );
    this.#cutMarks(dive.tick);
  }

  /**
   * Takes up another line at its end; the one that is flown takes its place, at the same knot.
   * @returns the dive to be flown on
   * @throws {RangeError} when there is no line of that letter
   */
  switchTo(letter: string, flown: Dive): Dive {
    const taken = this.#line(letter);
    const { knotTick } = taken;
    const left = {
      ...{ letter, name: this.name || endWords(flown), dive: flown, knotTick, shown: true },
      ...{ leftAs: this.#nextLeaving(), later: this.#marksAfter(knotTick) },
    };
    this.#keep(
      this.#others.map((line) => (line === taken ? left : { ...line, knotTick: Math.min(line.knotTick, knotTick) })),
    );
    this.name = taken.name;
    this.#cutMarks(knotTick);
    this.#marks = [...this.#marks, ...taken.later];
    return taken.dive;
  }

  /** Shows or hides a line. @throws {RangeError} when there is no line of that letter */
  show(letter: string, shown: boolean): void {
    const line = this.#line(letter);
    this.#keep(this.#others.map((one) => (one === line ? { ...one, shown } : one)));
  }

  /** Gives a line a name; an empty one brings back what it was called at first. @throws {RangeError} when there is no such line */
  call(letter: string, name: string): void {
    const line = this.#line(letter);
    const called = name.trim() || endWords(line.dive);
    this.#keep(this.#others.map((one) => (one === line ? { ...one, name: called } : one)));
  }

  /** Lets a line go for good. @throws {RangeError} when there is no line of that letter */
  remove(letter: string): void {
    const line = this.#line(letter);
    this.#keep(this.#others.filter((one) => one !== line));
  }

  /** Puts a bookmark on a moment, or takes away the one that stands there. @returns false where all numbers are taken */
  mark(tick: number): boolean {
    const there = this.#marks.find((mark) => mark.tick === tick);
    if (there) {
      this.#marks = this.#marks.filter((mark) => mark !== there);
      return true;
    }
    const numbers = Array.from({ length: MOST_MARKS }, (_, i) => i + 1);
    const used = [this.#marks, ...this.#others.map(({ later }) => later)].flat();
    const number = numbers.find((one) => !used.some((mark) => mark.number === one));
    if (number === undefined) return false;
    this.#marks = [...this.#marks, { number, tick, name: '' }].sort((a, b) => a.tick - b.tick);
    return true;
  }

  /** Gives a bookmark a name; an empty one takes it away. @throws {RangeError} when there is no bookmark of that number */
  callMark(number: number, name: string): void {
    const mark = this.#markOf(number);
    this.#marks = this.#marks.map((one) => (one === mark ? { ...one, name: name.trim() } : one));
  }

  /** Takes a bookmark away, wherever one looks. @throws {RangeError} when there is no bookmark of that number */
  removeMark(number: number): void {
    const mark = this.#markOf(number);
    this.#marks = this.#marks.filter((one) => one !== mark);
  }

  #markOf(number: number): Bookmark {
    const mark = this.#marks.find((one) => one.number === number);
    if (!mark) throw new RangeError(`there is no bookmark ${number}`);
    return mark;
  }

  #marksAfter(tick: number): readonly Bookmark[] {
    return this.#marks.filter((mark) => mark.tick >= tick + TICKS_PER_CHANGE);
  }

  #nextLeaving(): number {
    return Math.max(0, ...this.#others.map(({ leftAs }) => leftAs)) + 1;
  }

  #oldest(): OtherLine {
    return this.#others.reduce((oldest, line) => (line.leftAs < oldest.leftAs ? line : oldest));
  }

  #line(letter: string): OtherLine {
    const line = this.#others.find((one) => one.letter === letter);
    if (!line) throw new RangeError(`there is no line ${letter}`);
    return line;
  }

  #keep(lines: readonly OtherLine[]): void {
    this.#others = [...lines].sort((a, b) => (a.letter < b.letter ? -1 : 1));
  }

  /**
   * A bookmark is on the line: where that is another from a tick on, later ones go from it. One that stands where the line was left
   * stays, though lines part on the tick before, on which controls may change.
   */
  #cutMarks(tick: number): void {
    if (this.#marks.some((mark) => mark.tick > tick))
      this.#marks = this.#marks
        .filter((mark) => mark.tick < tick + TICKS_PER_CHANGE)
        .map((mark) => ({ ...mark, tick: Math.min(mark.tick, tick) }));
  }
}

/** How a line that nobody named is called: where and when it ended. */
export function endWords(dive: Dive): string {
  const seconds = Math.floor((dive.tick - dive.recording.startTick) / TICKS_PER_S);
  const clock = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  return `${Math.max(dive.state.depthM, 0).toFixed(1)} m at ${clock}`;
}
