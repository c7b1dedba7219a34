import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type LocalDate, localDateSchema } from '../../domain/time/local-date.ts';
import { aggregatesOf, type OfxAggregate, ofxElements } from './ofx-elements.ts';
import { keyOf, type StatementRead, type StatementRow, withKeys } from './statement-read.ts';

export const isOfx = (text: string): boolean =>
  /^\s*(?:OFXHEADER\s*:|<\?xml|<\?OFX|<OFX)/i.test(text.slice(0, 500)) && /<OFX[\s>]/i.test(text);

const MOST_LINES = 50_000;

/**
 * Reads the statements of an OFX file, one an account, by the open standard (OFX 1.0.2 and 2.2: amounts are signed as the
 * customer sees them, 3.2.9.2; a day is what the bank writes, whatever zone stands behind it; FITID tells lines apart;
 * CORRECTFITID with CORRECTACTION takes an earlier one back).
 */
export function readOfx(text: string): Outcome<readonly StatementRead[]> {
  const root = ofxElements(text.replace(/^[\s\S]*?(?=<OFX[\s>])/i, ''));
  const statements = aggregatesOf(root, 'STMTRS', 'CCSTMTRS');
  if (statements.length === 0)
    return refuse('no-statement', 'This OFX file holds no statement of an account. Export the account’s transactions.');
  const foreign = statements.find(({ values }) => (values.get('CURDEF') ?? 'USD').toUpperCase() !== 'USD');
  if (foreign !== undefined)
    return refuse('other-currency', `This statement is in ${foreign.values.get('CURDEF')}. Only US dollars are read.`);
  if (statements.some((one) => aggregatesOf(one, 'STMTTRN').length > MOST_LINES))
    return refuse('too-large', 'This statement has more than 50,000 lines. Export a shorter time.');
  return ok(statements.map(readStatement));
}

interface OfxLine {
  readonly id: string | undefined;
  readonly date: LocalDate;
  readonly cents: Cents;
  readonly text: string;
  readonly check?: string;
  readonly replaces?: string;
}

function readStatement(statement: OfxAggregate): StatementRead {
  const [from] = aggregatesOf(statement, 'BANKACCTFROM', 'CCACCTFROM');
  const number = from?.values.get('ACCTID') ?? '';
  const account = number.length > 4 ? `…${number.slice(-4)}` : number;
  const faults: StatementRow[] = [];
  const notes: StatementRow[] = [];
  const dropped = new Set<string>();
  const lines = new Map<string, OfxLine>();
  aggregatesOf(statement, 'STMTTRN').forEach((part, i) => {
    const row = i + 1;
    const line = readLine(part, account);
    const id = part.values.get('FITID');
    const corrected = part.values.get('CORRECTFITID');
    const deletes = part.values.get('CORRECTACTION')?.toUpperCase() === 'DELETE';
    if (corrected !== undefined) {
      const had = lines.delete(`id ${corrected}`);
      const what = deletes ? 'deletes' : 'replaces';
      notes.push({ row, message: `The bank ${what} the line ${corrected}${had ? '' : ' of an earlier statement'}.` });
      if (deletes) dropped.add(keyOf(account, `F${corrected}`));
      if (deletes) return;
    }
    if (!line.ok) {
      faults.push({ row, message: line.message });
      return;
    }
    if (line.value.cents === 0) {
      notes.push({ row, message: `“${line.value.text}” has an amount of $0.` });
      return;
    }
    const own = id === undefined ? `row ${row}` : `id ${id}`;
    const before = lines.get(own);
    if (before === undefined) lines.set(own, line.value);
    else if (before.cents === line.value.cents && before.date === line.value.date)
      notes.push({ row, message: `The line ${id} is in the file twice. It counts once.` });
    else {
      // A bank that gives two lines one id breaks the standard; neither line may be lost for it.
      lines.set(`${own} row ${row}`, { ...line.value, id: `${id}#${line.value.date}#${line.value.cents}` });
      notes.push({ row, message: `The file has two different lines with the id ${id}. Both stay: check them.` });
    }
  });
  const found = [...lines.values()].toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const keyed = withKeys(
    account,
    found.map((line) => ({ ...line, id: line.id === undefined ? undefined : `F${line.id}` })),
  );
  return {
    account,
    ...period(statement),
    ...balances(statement, found),
    lines: keyed,
    dropped: [...dropped],
    faults,
    notes,
  };
}

function readLine(part: OfxAggregate, account: string): Outcome<OfxLine> {
  const of = (name: string) => part.values.get(name);
  const [payee] = aggregatesOf(part, 'PAYEE');
  const name = of('NAME') ?? payee?.values.get('NAME');
  const memo = of('MEMO');
  const text = [name, memo === name ? undefined : memo, of('REFNUM')].filter((word) => word !== undefined).join(' · ');
  const check = of('CHECKNUM')?.replace(/^0+(?=.)/, '');
  const type = of('TRNTYPE')?.toUpperCase();
  const date = ofxDay(of('DTPOSTED'));
  if (date === null)
    return refuse('day', `“${text}” has no day that can be read (DTPOSTED ${of('DTPOSTED') ?? 'missing'}).`);
  const amount = parseMoney((of('TRNAMT') ?? '').replace(/^\+/, ''), {
    decimal: /,\d{1,2}$/.test(of('TRNAMT') ?? '') ? ',' : '.',
  });
  if (!amount.ok) return refuse('amount', `“${text}” has no amount that can be read. ${amount.message}`);
  const corrected = of('CORRECTFITID');
  return ok({
    id: of('FITID'),
    date,
    cents: amount.value,
    text: (text === '' ? (type ?? 'No description') : text).slice(0, 300),
    ...(check !== undefined && { check: check.slice(0, 40) }),
    ...(corrected !== undefined && { replaces: keyOf(account, `F${corrected}`) }),
  });
}

/** The day that stands there. The zone behind it says when it was, not on which page of the statement it is. */
function ofxDay(text: string | undefined): LocalDate | null {
  const match = /^(\d{4})(\d\d)(\d\d)(?:\d{2,6}(?:\.\d+)?)?(?:\[[^\]]*\])?$/.exec(text ?? '');
  const day = localDateSchema.safeParse(match === null ? '' : `${match[1]}-${match[2]}-${match[3]}`);
  return day.success ? day.data : null;
}

function period(statement: OfxAggregate) {
  const [list] = aggregatesOf(statement, 'BANKTRANLIST');
  const [from, to] = [ofxDay(list?.values.get('DTSTART')), ofxDay(list?.values.get('DTEND'))];
  return { ...(from !== null && { from }), ...(to !== null && { to }) };
}

/** The standard has no opening balance; it is the closing one less the lines. */
function balances(statement: OfxAggregate, lines: readonly OfxLine[]): Partial<StatementRead> {
  const [ledger] = aggregatesOf(statement, 'LEDGERBAL');
  const closing = parseMoney(ledger?.values.get('BALAMT') ?? '', { decimal: '.' });
  if (!closing.ok) return {};
  const opening = cents(closing.value - sumCents(lines.map((line) => line.cents)));
  const message = `The closing balance is ${formatMoney(closing.value)}; less the lines, the opening balance is ${formatMoney(opening)}. Compare it with the statement before.`;
  return { closing: closing.value, opening, balance: { ties: true, message } };
}
