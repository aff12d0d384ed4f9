import {
  LESSONS,
  MENU,
  demonstratorOf,
  fetchTried,
  knownOf,
  minutesOf,
  nextOf,
  pathsThrough,
  type CoursePath,
  type LessonPath,
  type PathStep,
} from '../lesson/index.ts';
import {
  WishEvent,
  fetchSheets,
  type LearnAsk,
  type LearnView,
  type OwnLesson,
  type PathStop,
  type TriedView,
  type Wish,
} from '../panels/index.ts';
import { Store, type KeptResult } from '../store/index.ts';
import benchTemplate from '../../lessons/bench/template.yaml?raw';
import template from '../../lessons/template.yaml?raw';
import { goesBackTo } from './address.ts';
import { DEMONSTRATIONS } from './demonstrations.ts';
import type { Dives } from './dives.ts';
import { saveFile } from './files.ts';
import './lessons.css';
import { keepOwnFile, ownFile, readOwn, warningsOf, type OwnFile } from './own-lesson.ts';
import { keepPredictions, type Predicting } from './predictions.ts';
import type { Shell } from './shell.ts';
import { sayingTrouble } from './trouble-words.ts';
import { keepWalk, leftWalk, type Walk } from './walk-memory.ts';

/** What the place of the lessons may do with the program. */
interface Learner extends Predicting {
  readonly shell: Shell;
  readonly dives: Dives;
}

/** The place of the lessons: paths and what is known of them, a lesson file of one's own, the tables, and walking a path before a class. */
class LessonPlace {
  readonly #program: Learner;
  readonly #shell: Shell;
  readonly #paths = pathsThrough(MENU);
  #path: CoursePath | null = null;
  #results: readonly KeptResult[] = [];
  #own: OwnLesson | null = null;
  #tried: TriedView | null = null;
  #walk: Walk | null;

  constructor(program: Learner) {
    this.#program = program;
    this.#shell = program.shell;
    this.#walk = leftWalk(this.#shell.window);
    const { hash } = this.#shell.window.location;
    const stop = this.#stopOf(this.#walk);
    // A walk goes on after a reload where it was; whoever came elsewhere has left it.
    if (stop && goesBackTo(this.#shell.window, hash, stop.id)) this.#shell.show({ projector: true });
    else this.#walk = null;
    this.#shell.root.addEventListener('wish', (event) => {
      if (event instanceof WishEvent) this.#hear(event.wish);
    });
    this.#tell();
    const kept = ownFile(this.#shell.window);
    if (kept) void this.#reopen(kept);
  }

  #hear(wish: Wish): void {
    if (wish.kind === 'learn') void sayingTrouble(this.#shell, this.#do(wish.ask));
    else if (wish.kind === 'place' && wish.place === 'learn') {
      this.#tried = null;
      this.#tell();
      void this.#look();
    } else if (wish.kind === 'file' && this.#shell.view.place === 'learn')
      void sayingTrouble(this.#shell, this.#openOwn(wish.file));
    // Whoever begins something else has left the path.
    else if (wish.kind === 'lesson' && this.#walk && wish.id !== this.#stopOf(this.#walk)?.id) this.#goOn(null);
    else if (wish.kind === 'projector' && !wish.on) this.#goOn(null);
    else if (wish.kind === 'settings') this.#tell();
  }

  async #do(ask: LearnAsk): Promise<void> {
    if (ask.do === 'file') return this.#openOwn(ask.file);
    if (ask.do === 'template') return this.#save(template, 'lesson.yaml');
    if (ask.do === 'bench-template') return this.#save(benchTemplate, 'bench-lesson.yaml');
    if (ask.do === 'tables') return this.#openTables();
    if (ask.do === 'walk') return this.#begin({ path: ask.path, at: 0 });
    if (ask.do === 'show-next') return this.#showNext();
    if (ask.do === 'hand-over') return this.#program.dives.handOver('steady');
    if (ask.do === 'next') return this.#beginNext();
    if (ask.do === 'path') this.#path = ask.path;
    else if (ask.do === 'close-own') {
      keepOwnFile(this.#shell.window, null);
      this.#own = null;
    }
    this.#tell();
  }

  #save(text: string, name: string): void {
    saveFile(this.#shell.root.ownerDocument, new TextEncoder().encode(text), name);
  }

  async #openTables(): Promise<void> {
    const [tried] = await Promise.all([fetchTried(), fetchSheets()]);
    this.#tried = tried;
    this.#tell();
    this.#shell.show({ place: 'learn', moreOpen: false, lessons: MENU });
  }

  async #openOwn(file: File): Promise<void> {
    const read = { name: file.name, text: await file.text() };
    const own = await readOwn(read);
    if ('problems' in own) {
      const { length } = own.problems;
      const words = `${file.name} was not opened: ${length === 1 ? 'one problem' : `${length} problems`}.`;
      return this.#shell.show({ trouble: words, problems: own.problems });
    }
    this.#shell.show({ trouble: '', problems: [] });
    keepOwnFile(this.#shell.window, read);
    await this.#take(read.name, own.lesson);
  }

  async #reopen(kept: OwnFile): Promise<void> {
    const own = await readOwn(kept).catch(() => null);
    if (own && 'lesson' in own && !this.#own) await this.#take(kept.name, own.lesson);
  }

  async #take(fileName: string, lesson: Parameters<typeof warningsOf>[0]): Promise<void> {
    const own = { fileName, card: lesson, warnings: null };
    this.#own = own;
    this.#tell();
    const warnings = await warningsOf(lesson);
    if (this.#own === own) this.#own = { ...own, warnings };
    this.#tell();
  }

  /** Looks what is known of the lessons; without a database nothing is. */
  async #look(): Promise<void> {
    const store = new Store();
    try {
      this.#results = await store.results();
      this.#tell();
    } catch {
      // The list says nothing of flights then.
    } finally {
      store.close();
    }
  }

  #beginNext(): void {
    const next = this.#view().next;
    if (next) this.#wish(next.kind === 'lesson' ? { kind: 'lesson', id: next.id } : showing(next.id));
  }

  /** A press that comes while a stop is still being fetched skips nothing. */
  #showNext(): void {
    const walk = this.#walk;
    const stop = this.#stopOf(walk);
    if (!walk || !stop) return;
    const { presenting, bench, place } = this.#shell.view;
    const lesson = place === 'bench' ? bench?.lesson?.id : this.#program.dives.lesson?.lesson.id;
    const here = stop.kind === 'demonstration' ? presenting?.shown : lesson;
    if (here === stop.id) this.#begin({ ...walk, at: walk.at + 1 });
  }

  /** A stop of a path before a class; after the last one, the list. */
  #begin(walk: Walk): void {
    const stop = this.#stopOf(walk);
    this.#goOn(stop ? walk : null);
    if (!stop) return this.#wish({ kind: 'place', place: 'learn' });
    this.#shell.show({ projector: true });
    if (stop.kind === 'demonstration') return this.#wish(showing(stop.id));
    const flown = LESSONS.find((one) => one.id === stop.id);
    // At the bench nobody flies: the instructor's hands do.
    this.#wish({ kind: 'lesson', id: stop.id, ...(flown && { by: demonstratorOf(flown) }) });
  }

  #goOn(walk: Walk | null): void {
    this.#walk = walk;
    keepWalk(this.#shell.window, walk);
    this.#tell();
  }

  #pathOf(id: CoursePath | null): LessonPath | null {
    return this.#paths.find((one) => one.id === id) ?? null;
  }

  #stopOf(walk: Walk | null): PathStop | null {
    const step = this.#pathOf(walk?.path ?? null)?.steps[walk?.at ?? -1];
    return step ? stopOf(step) : null;
  }

  #view(): LearnView {
    const own = this.#own ? [this.#own.card] : [];
    const known = Object.fromEntries(
      [...MENU, ...own].flatMap(({ id }) => {
        const one = knownOf(this.#results.filter(({ lessonId }) => lessonId === id));
        return one ? [[id, one] as const] : [];
      }),
    );
    const { opened } = this.#shell.view.settings;
    const mayBegin = (id: string) => opened || MENU.find((one) => one.id === id)?.opens !== 'instructor';
    const stopsOf = (path: CoursePath | null) => this.#pathOf(path)?.steps.map((step) => stopOf(step)) ?? [];
    const stops = stopsOf(this.#path);
    const walk = this.#walk && { next: this.#stopOf({ ...this.#walk, at: this.#walk.at + 1 })?.title ?? '' };
    return {
      paths: this.#paths.map((path) => ({ ...path, minutes: path.minutes && minutesOf(path, MENU) })),
      path: this.#path,
      stops,
      // Where all lessons stand, what comes next is what it is for whoever learns alone.
      next: nextOf(this.#path ? stops : stopsOf('self-study'), (id) => known[id] ?? null, mayBegin),
      known,
      own: this.#own,
      tried: this.#tried,
      walk,
    };
  }

  #tell(): void {
    this.#shell.show({ learn: this.#view() });
  }

  #wish(wish: Wish): void {
    this.#shell.root.dispatchEvent(new WishEvent(wish));
  }
}

const showing = (id: string): Wish => ({ kind: 'present', ask: { do: 'show', id } });

function stopOf(step: PathStep): PathStop {
  if (step.kind === 'demonstration') {
    const { title = step.id, about = '' } = DEMONSTRATIONS.find(({ id }) => id === step.id) ?? {};
    return { kind: step.kind, id: step.id, title, about, minutes: step.minutes };
  }
  const { title = step.id, objective = '', minutes = 0 } = MENU.find(({ id }) => id === step.id) ?? {};
  return { kind: step.kind, id: step.id, title, about: objective, minutes };
}

/** Gives a program its place of the lessons, which hears wishes from now on. */
export function keepLessons(program: Learner): void {
  new LessonPlace(program);
  keepPredictions(program);
}
