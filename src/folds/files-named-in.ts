import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import type { NamedFile } from '../journal/happenings/row.ts';

/** The files that an entry speaks of, whether or not it counts. */
export const filesNamedIn = ({ happening }: Entry): readonly NamedFile[] => rowOf(happening).files?.(happening) ?? [];
