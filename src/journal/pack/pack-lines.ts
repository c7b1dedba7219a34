import type { LotId } from '../../domain/lot/lot.ts';
import { canonicalJson } from '../canonical-json.ts';
import { contentText, hashOfText } from '../entry-hash.ts';
import type { EntryId } from '../ids.ts';
import type { Envelope } from '../read-entry.ts';
import { subjectOfLot } from '../subject.ts';
import type { PackLine } from './pack-format.ts';

/** How much of the journal a pack shows. */
export interface PackChoice {
  readonly lot: LotId;
  /** The entry that brought the lot in. */
  readonly bornIn: EntryId;
  /** Whether an entry about the lot is shown whole; false holds its content back. */
  readonly shows: (entry: Envelope) => boolean;
}

/** Whether an entry is part of the lot's life, whole or held back. */
export function isAbout(entry: Envelope, { lot, bornIn }: Pick<PackChoice, 'lot' | 'bornIn'>): boolean {
  return entry.id === bornIn || entry.subject === subjectOfLot(lot);
}

/**
 * One entry as a line of a pack. An entry that brought other lots in as well is held back always: it can only be
 * shown whole, and the others are nobody's business.
 */
export function packLineOf(raw: Envelope, choice: PackChoice): PackLine {
  if (isAbout(raw, choice) && choice.shows(raw) && !bringsOthers(raw)) return { entry: raw };
  const { id, device, sequence, previous, hash } = raw;
  if (typeof raw.salt !== 'string') return { bare: { id, device, sequence, previous, hash } };
  const { happening, salt, ...fields } = raw;
  const content = hashOfText(contentText(canonicalJson(happening), salt));
  // Every field but the two that `content` stands for; an entry of a newer version may have more, and stays readable.
  return { held: { ...fields, content } } as PackLine;
}

export function bringsOthers({ happening }: Envelope): boolean {
  const lots: unknown = happening.kind === 'lots-added' ? happening.lots : undefined;
  return Array.isArray(lots) && lots.length > 1;
}
