import type { Entry } from '../journal/entry.ts';
import type { Noted } from '../journal/states/noted.ts';

/** Who wrote an entry, and when, as it is kept beside what the entry says. */
export const notedBy = ({ id, at, author }: Entry): Noted => ({ entry: id, notedAt: at, author });
