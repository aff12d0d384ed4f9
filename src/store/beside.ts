import { CONTROL_NAMES, changesOf, columnsOf, firstControls, type Dive, type Run } from '../dive/index.ts';
import type { BesideRecord, KeptBeside, RunRecord } from './kept.ts';

/** How it stands in the database: each dive as a run. */
export function besideRecord(id: number, beside: KeptBeside<Dive>): BesideRecord {
  const { name, marks, others, ghost } = beside;
  return {
    id,
    name,
    marks: plainMarks(marks),
    others: others.map(({ dive, later, ...line }) => ({ ...line, later: plainMarks(later), dive: runRecord(dive) })),
    ghost: ghost && { name: ghost.name, shown: ghost.shown, dive: runRecord(ghost.dive) },
  };
}

/**
 * What is kept beside a dive, each run checked as a run file is.
 * @throws {Error} when anything of it is not as we write it
 */
export async function besideOf(record: BesideRecord): Promise<KeptBeside<Run>> {
  const { name, others, ghost } = record;
  if (typeof name !== 'string') throw new RangeError('a name that is none');
  const marks = checkedMarks(record.marks);
  const lines = others.map(async ({ dive, ...line }: Partial<OtherRecord> & OldRecord, i) => {
    // Those that were kept before it was counted were left in the order of their letters.
    const { letter, knotTick, leftAs = i + 1, later = [] } = line;
    if (!/^[A-D]$/.test(letter) || !isCount(knotTick) || !isCount(leftAs) || typeof line.name !== 'string')
      throw new RangeError('a line that is none');
    return { ...line, leftAs, later: checkedMarks(later), dive: await checkedRun(dive) };
  });
  return {
    name,
    marks,
    others: await Promise.all(lines),
    ghost: ghost && { ...ghost, dive: await checkedRun(ghost.dive) },
  };
}

type Marks = BesideRecord['marks'];
type OtherRecord = BesideRecord['others'][number];
type OldRecord = Omit<OtherRecord, 'leftAs' | 'later'>;

const plainMarks = (marks: Marks): Marks => marks.map(({ number, tick, name }) => ({ number, tick, name }));

/** @throws {RangeError} when they are none */
function checkedMarks(found: Marks): Marks {
  // Those that were kept before bookmarks had names have none.
  const marks = found.map((mark) => ({ ...mark, name: (mark as Partial<typeof mark>).name ?? '' }));
  if (!marks.every((one) => isCount(one.number) && isCount(one.tick) && isText(one.name)))
    throw new RangeError('bookmarks that are none');
  return marks;
}

/** A dive as a whole, as it stands in the database. */
export function runRecord(dive: Dive): RunRecord {
  const { rig, start, changes, ticks, locked } = dive.run();
  const controls = CONTROL_NAMES.map((name) => changes[0]!.controls[name]);
  return { rig, start, locked, controls, ticks, columns: columnsOf({ start, changes }) };
}

/** A dive out of the database. @throws {Error} when it is not what a run file may hold */
export async function checkedRun({ rig, start, locked, controls, ticks, columns }: RunRecord): Promise<Run> {
  // Writing it as a run file and reading that holds every number to what a run may have.
  const { readRun, writeRun } = await import('../dive/file.ts');
  const unpacked = changesOf(columns, firstControls(controls), start.tick, ticks);
  if ('fault' in unpacked) throw new RangeError(unpacked.fault.found);
  const run = { rig, start, locked, changes: unpacked.changes, ticks };
  const read = readRun(writeRun(run, { name: '-', endHash: NO_HASH }));
  if ('problems' in read) throw new RangeError(read.problems[0]?.found);
  return read.file.run;
}

/** Nobody asks where such a run ends. */
const NO_HASH = '0'.repeat(16);

const isText = (value: unknown): boolean => typeof value === 'string';
const isCount = (value: unknown): boolean => typeof value === 'number' && Number.isInteger(value) && value >= 0;
