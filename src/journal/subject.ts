import { type LotId, lotIdSchema } from '../domain/lot/lot.ts';
import { type Subject, subjectSchema } from './entry.ts';

export const SETUP: Subject = subjectSchema.parse('setup');
/** A batch of lots that came in together. */
export const LOTS: Subject = subjectSchema.parse('lots');
export const ALERTS: Subject = subjectSchema.parse('alerts');
/** The books as a whole: one bill may be for several cars. */
export const BOOKS: Subject = subjectSchema.parse('books');

export function subjectOfLot(id: LotId): Subject {
  return subjectSchema.parse(`lot:${id}`);
}

/** The lot that a subject names, or null when it names something else. */
export function lotOfSubject(subject: string): LotId | null {
  const id = lotIdSchema.safeParse(subject.startsWith('lot:') ? subject.slice(4) : '');
  return id.success ? id.data : null;
}
