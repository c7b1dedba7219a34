import { plainWords } from '../../domain/text/plain-words.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { readBankAmount } from './bank-amount.ts';
import { looksLikeDay } from './day-order.ts';

/** What a column of a bank statement may hold. */
export const BANK_ROLES = ['date', 'text', 'amount', 'out', 'in', 'kind', 'balance', 'check', 'id'] as const;
export type BankRole = (typeof BANK_ROLES)[number];

/** What headings say, in the order in which they are tried. */
const WORDS: readonly (readonly [BankRole | 'other-date', RegExp])[] = [
  ['other-date', /^(?:value|transaction|trans|trn|effective|available|entry) (?:date|day)$/],
  ['date', /\b(?:date|day|posted|booked|when)\b/],
  ['balance', /\bbal(?:ance)?\b/],
  ['check', /\b(?:check|cheque|chk|chq|ck|serial)\b/],
  ['id', /\b(?:(?:transaction|trans|trn|fit|bank|unique|sequence) ?(?:id|no|number)|id)\b/],
  [
    'kind',
    /^(?:(?:transaction |trans |entry )?(?:type|kind|direction)|dr ?(?:or )?cr|cr ?(?:or )?dr|debit (?:or )?credit|credit (?:or )?debit|d c|c d|sign|in (?:or )?out)$/,
  ],
  ['out', /\b(?:debits?|withdrawals?|withdrawn|out|paid out|payments?|charges?|subtractions?|spent)\b/],
  ['in', /\b(?:credits?|deposits?|in|paid in|received|receipts?|additions?)\b/],
  ['amount', /\b(?:amount|amt|value|sum|usd|dollars|net)\b/],
  [
    'text',
    /\b(?:descr\w*|memo|details?|payee|name|narrative|narration|particulars?|text|transaction|reference|ref|what|notes?|payer|from|to|category|remarks?|information)\b/,
  ],
];

/** What a heading says that its column holds; null when it says nothing. */
export function bankRoleOf(heading: string): BankRole | 'other-date' | null {
  const words = plainWords(heading);
  return words === '' ? null : (WORDS.find(([, pattern]) => pattern.test(words))?.[0] ?? null);
}

const share = (cells: readonly string[], is: (cell: string) => boolean): number => {
  const filled = cells.filter((cell) => !isBlankCell(cell));
  return filled.length === 0 ? 0 : filled.filter(is).length / filled.length;
};
const isAmount = (cell: string): boolean => readBankAmount(cell).ok;
const KINDS = /^(?:d|c|dr|cr|debit|credit|deb|cred|in|out|\+|-|withdrawal|deposit|check|payment|fee)$/i;
const MOSTLY = 0.6;

/**
 * What each column holds, by its heading and, where that says nothing or another thing than the cells, by its cells.
 * @param headings null where the rows begin at once
 */
export function bankRoles(
  headings: readonly string[] | null,
  rows: readonly (readonly string[])[],
): (BankRole | null)[] {
  const width = Math.max(headings?.length ?? 0, ...rows.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, column) => {
    const cells = rows.map((row) => row[column] ?? '');
    return { cells, said: headings === null ? null : bankRoleOf(headings[column] ?? '') };
  });
  const hasDate = columns.some(({ said }) => said === 'date');
  const roles = columns.map(({ cells, said }): BankRole | null => {
    const money = share(cells, isAmount) > MOSTLY;
    if (said === 'other-date') return hasDate || share(cells, looksLikeDay) <= MOSTLY ? null : 'date';
    if (said === 'date') return share(cells, looksLikeDay) > MOSTLY ? 'date' : null;
    if (said === 'out' || said === 'in' || said === 'amount' || said === 'balance') {
      if (money) return said;
      if (share(cells, (cell) => KINDS.test(cell.trim())) > MOSTLY) return 'kind';
      return cells.every(isBlankCell) ? said : 'text';
    }
    if (said === 'kind') return share(cells, (cell) => /\p{L}|^[+-]$/u.test(cell)) > MOSTLY ? 'kind' : null;
    if (said !== null || headings !== null) return said;
    return byCells(cells, money);
  });
  return withoutHeadings(
    oneEach(roles),
    headings !== null,
    columns.map(({ cells }) => cells),
  );
}

function byCells(cells: readonly string[], money: boolean): BankRole | null {
  if (share(cells, looksLikeDay) > MOSTLY) return 'date';
  if (money && share(cells, (cell) => /[.,]\d\d\)?-?\s*(?:cr|dr)?$/i.test(cell.trim())) > MOSTLY) return 'amount';
  if (share(cells, (cell) => KINDS.test(cell.trim())) > MOSTLY) return 'kind';
  return share(cells, (cell) => /\p{L}{2}/u.test(cell)) > MOSTLY ? 'text' : null;
}

/** One column a role, the first of them; words may stand in several. */
function oneEach(roles: readonly (BankRole | null)[]): (BankRole | null)[] {
  return roles.map((role, i) => (role === null || role === 'text' || roles.indexOf(role) === i ? role : null));
}

/** Without headings the last of several columns of amounts is the balance, when more of its cells are filled. */
function withoutHeadings(
  roles: (BankRole | null)[],
  named: boolean,
  columns: readonly (readonly string[])[],
): (BankRole | null)[] {
  if (named) return roles;
  const amounts = columns.flatMap((cells, i) =>
    byCells(cells, share(cells, isAmount) > MOSTLY) === 'amount' ? [i] : [],
  );
  const meant = amounts.length === 2 ? LAST_IS_BALANCE : amounts.length === 3 ? SIDES_AND_BALANCE : [];
  return roles.map((role, column) => meant[amounts.indexOf(column)] ?? role);
}

const LAST_IS_BALANCE: readonly BankRole[] = ['amount', 'balance'];
const SIDES_AND_BALANCE: readonly BankRole[] = ['out', 'in', 'balance'];
