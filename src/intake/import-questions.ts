import { plainWords } from '../domain/text/plain-words.ts';
import type { PlannedRow } from './import-plan.ts';

/** Names that the setup does not know, each asked about once for all its rows. */
export interface ImportQuestion {
  readonly about: 'venue' | 'title';
  /** As the first of the rows writes it. */
  readonly text: string;
  /** Stands for the name however it is written: see `Meant`. */
  readonly name: string;
  readonly rows: number;
}

/** What the user said a name means, by `plainWords` of it: the id of a venue or a title state. */
export interface Meant {
  readonly venue: ReadonlyMap<string, string>;
  readonly title: ReadonlyMap<string, string>;
}

export const NOTHING_MEANT: Meant = { venue: new Map(), title: new Map() };

/** One question for each unknown name, the one with the most rows first. */
export function importQuestions(
  rows: readonly PlannedRow[],
  known: { readonly titles: readonly { readonly id: string }[] },
): ImportQuestion[] {
  const asked = new Map<string, ImportQuestion>();
  const titles = new Set(known.titles.map(({ id }) => id));
  const ask = (about: ImportQuestion['about'], text: string | undefined): void => {
    const name = plainWords(text ?? '');
    if (text === undefined || name === '') return;
    const before = asked.get(`${about} ${name}`) ?? { about, text, name, rows: 0 };
    asked.set(`${about} ${name}`, { ...before, rows: before.rows + 1 });
  };
  for (const { reading } of rows) {
    if (!reading.usable) continue;
    const { venueId, venueName, titleId } = reading.facts;
    if (venueId === undefined) ask('venue', venueName);
    if (titleId !== undefined && !titles.has(titleId)) ask('title', titleId);
  }
  return [...asked.values()].sort((a, b) => b.rows - a.rows);
}
