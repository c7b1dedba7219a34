import { type Outcome, ok } from '../../domain/outcome.ts';
import { type BankTable, openBankTable } from './bank-table.ts';
import { isOfx, readOfx } from './read-ofx.ts';
import type { StatementRead } from './statement-read.ts';

/** A statement that was opened: OFX says all by itself, of a table something may have to be said. */
export type OpenedStatement =
  | { readonly as: 'ofx'; readonly statements: readonly StatementRead[] }
  | { readonly as: 'table'; readonly table: BankTable };

/** Opens the text of a bank statement, CSV or OFX. */
export function openStatement(text: string): Outcome<OpenedStatement> {
  if (isOfx(text)) {
    const read = readOfx(text);
    return read.ok ? ok({ as: 'ofx', statements: read.value }) : read;
  }
  const table = openBankTable(text);
  return table.ok ? ok({ as: 'table', table: table.value }) : table;
}
