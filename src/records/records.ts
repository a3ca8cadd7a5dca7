import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Progress } from '../lesson/index.ts';

/** Progress in one lesson and when it was last made. */
export interface Kept {
  readonly progress: Progress;
  /** ms since 1970, UTC */
  readonly at: number;
}

/** Where progress is kept. Nothing here throws: where the browser refuses, it lasts as long as the page. */
export interface Records {
  /** False once the browser has refused to keep something; say so to the learner. */
  readonly lasting: () => boolean;
  /** What was kept of a lesson; undefined if nothing was, or if it cannot be read. */
  load(lesson: string): Promise<Kept | undefined>;
  save(progress: Progress): Promise<void>;
  all(): Promise<readonly Kept[]>;
  /** Forgets one lesson. */
  clear(lesson: string): Promise<void>;
}

interface Store extends DBSchema {
  readonly progress: { readonly key: string; readonly value: Kept };
}

const NAME = 'ohmward';
const VERSION = 1;

/** Opens the records of this computer.
 *  @param now the clock, ms since 1970 */
export function openRecords(now: () => number): Records {
  const memory = new Map<string, Kept>();
  let lasting = true;
  const opening = open().catch(refused);

  function refused(): null {
    lasting = false;
    return null;
  }

  async function ask<Answer>(question: (database: IDBPDatabase<Store>) => Promise<Answer>): Promise<Answer | null> {
    const database = await opening;
    if (!database) return null;
    return question(database).catch(refused);
  }

  return {
    lasting: () => lasting,
    async load(lesson) {
      const kept = memory.get(lesson) ?? (await ask((database) => database.get('progress', lesson)));
      return isKept(kept) ? kept : undefined;
    },
    async save(progress) {
      const kept = { progress, at: now() };
      memory.set(progress.lesson, kept);
      await ask((database) => database.put('progress', kept, progress.lesson));
    },
    async all() {
      const stored = (await ask((database) => database.getAll('progress'))) ?? [];
      const byLesson = new Map(stored.filter(isKept).map((kept) => [kept.progress.lesson, kept]));
      for (const [lesson, kept] of memory) byLesson.set(lesson, kept);
      return [...byLesson.values()];
    },
    async clear(lesson) {
      memory.delete(lesson);
      await ask((database) => database.delete('progress', lesson));
    },
  };
}

/** Throws inside the promise also where there is no database at all. */
async function open(): Promise<IDBPDatabase<Store>> {
  return openDB<Store>(NAME, VERSION, {
    upgrade: (database) => void database.createObjectStore('progress'),
  });
}

/** Whether a stored thing is progress as it is written today; an older or foreign one is not read. */
function isKept(value: unknown): value is Kept {
  if (!isObject(value) || !isObject(value['progress']) || typeof value['at'] !== 'number') return false;
  const { lesson, step, answers, hints, tried, marks } = value['progress'];
  return (
    typeof lesson === 'string' &&
    typeof step === 'number' &&
    [answers, hints, tried].every(isObject) &&
    Array.isArray(marks)
  );
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
