import type { FolderStage, PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { dateInWords } from '../words/date-words.ts';
import { folderName } from './folder-name.ts';

/** What the list of folders says of one car, so that it can be drawn without working anything out. */
export interface FolderWords {
  readonly lot: LotId;
  readonly name: string;
  readonly won: string;
  readonly venue: string;
  readonly stage: FolderStage;
  readonly look: boolean;
  readonly hammer: string;
  readonly expected: string;
  readonly actual: string;
  readonly owed: string;
  readonly notBilled: boolean;
  readonly floor: string;
  readonly gross: string;
  readonly missing: string;
}

/** A folder in the words of its row. */
export function folderWords(folder: PurchaseFolder): FolderWords {
  const { lot, facts, won, stage, look, open, notBilled = 0 } = folder;
  return {
    lot,
    name: folderName(facts),
    won: won === null ? '–' : dateInWords(won.date),
    venue: facts.venueName ?? '',
    stage,
    look,
    hammer: moneyOrDash(won?.hammer ?? null),
    expected: moneyOrDash(folder.expectedCents),
    actual: moneyOrDash(folder.actualCents),
    owed: moneyOrDash(open),
    notBilled: notBilled > 0 && open > 0,
    floor: moneyOrDash(folder.floorOwed),
    gross: moneyOrDash(folder.gross),
    missing: folder.missing.join(', '),
  };
}

export const moneyOrDash = (amount: Cents | null): string => (amount === null ? '–' : formatMoney(amount));
