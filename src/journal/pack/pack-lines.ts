import type { LotId } from '../../domain/lot/lot.ts';
import { contentHash } from '../entry-hash.ts';
import type { EntryId } from '../ids.ts';
import type { Envelope } from '../read-entry.ts';
import { shownRow } from '../row-tree.ts';
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
 * One entry as a line of a pack. Of an entry that brought other lots in as well only this lot's row is shown, and of an
 * earlier one, whose rows can't be told apart, nothing: the others are nobody's business.
 */
export function packLineOf(raw: Envelope, choice: PackChoice): PackLine {
  const row = isAbout(raw, choice) ? rowOf(raw, choice) : null;
  if (row === null && isAbout(raw, choice) && !bringsOthers(raw) && choice.shows(raw)) return { entry: raw };
  const { id, device, sequence, previous, hash } = raw;
  if (typeof raw.salt !== 'string') return { bare: { id, device, sequence, previous, hash } };
  const { happening, salt, ...fields } = raw;
  // Every field but the two that the content's hash stands for; an entry of a newer version may have more, and stays readable.
  return (
    row === null ? { held: { ...fields, content: contentHash(raw) } } : { batch: { ...fields, row } }
  ) as PackLine;
}

/** The lot's row of a batch, where it can be shown and is to be; null otherwise. */
function rowOf(raw: Envelope, { lot, shows }: PackChoice) {
  const { happening, salt, rows } = raw;
  const lots = lotsIn(raw);
  const at = lots.findIndex((one) => isLot(one, lot));
  if (rows === undefined || salt === undefined || at === -1) return null;
  if (!shows({ ...raw, happening: { ...happening, lots: [lots[at]] } })) return null;
  return shownRow({ happening: { ...happening, lots }, salt }, at + 1);
}

const isLot = (value: unknown, lot: LotId): boolean =>
  typeof value === 'object' && value !== null && 'id' in value && value.id === lot;

function bringsOthers(raw: Envelope): boolean {
  return lotsIn(raw).length > 1;
}

function lotsIn({ happening }: Envelope): readonly unknown[] {
  return happening.kind === 'lots-added' && Array.isArray(happening.lots) ? happening.lots : [];
}
