import type { Published } from './published.ts';

/** A table of published figures: what the file `<subject>.rows.ts` exports. */
export interface Subject {
  readonly subject: string;
  readonly rows: readonly Published[];
}

const files = import.meta.glob<{ readonly rows: readonly Published[] }>('./*.rows.ts', { eager: true });

/** Every `*.rows.ts` beside this file, by name. */
export const subjects: readonly Subject[] = Object.entries(files)
  .toSorted(([a], [b]) => a.localeCompare(b))
  .map(([file, { rows }]) => ({ subject: file.slice('./'.length, -'.rows.ts'.length), rows }));
