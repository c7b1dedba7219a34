import { readFileSync } from 'node:fs';
import { type FolderSource, type PurchaseFolder, purchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { lotNumber } from '../../domain/books/random-car.ts';

/**
 * Two months of won cars that an accountant worked out who had not read the code: what was billed, paid, advanced, sold and
 * canceled, and what stands at each month's end. Amounts are dollars as text, debits above zero.
 */
interface Written {
  readonly lots: readonly {
    readonly id: string;
    readonly venue: string;
    readonly closed: LocalDate;
    readonly price: string;
    /** Expected at the win. */
    readonly fees: string;
    readonly bills: readonly {
      readonly vendor: string;
      readonly number: string;
      readonly date: LocalDate;
      readonly for: 'venue' | 'transport' | 'recon';
      readonly lines: readonly (readonly [string, string])[];
    }[];
    readonly floor?: { readonly advanceOn: LocalDate; readonly amount: string; readonly payoffOn: LocalDate | null };
    readonly sale?: { readonly on: LocalDate; readonly kind: 'retail' | 'wholesale'; readonly price: string };
    readonly canceled?: {
      readonly on: LocalDate;
      readonly credit?: string;
      readonly kept?: string;
      readonly refundOn?: LocalDate | null;
    };
  }[];
  readonly payments: readonly {
    readonly date: LocalDate;
    readonly vendor: string;
    readonly number: string;
    readonly to: readonly { readonly bill: string; readonly amount: string }[];
  }[];
  readonly interest: readonly { readonly lot: string; readonly date: LocalDate; readonly amount: string }[];
  readonly expected: readonly {
    readonly month: string;
    readonly balances: Readonly<Record<string, string>>;
    readonly inventoryByLot: Readonly<Record<string, string>>;
    readonly accruedByLot: Readonly<Record<string, string>>;
    readonly floorByLot: Readonly<Record<string, string>>;
    readonly payableByVendor: Readonly<Record<string, string>>;
    readonly closingMustName: {
      readonly wonWithoutABill: readonly string[];
      readonly refundStillToCome: readonly string[];
      readonly billsUnpaid: readonly string[];
    };
  }[];
}

export const WRITTEN: Written = JSON.parse(readFileSync('tests/fixtures/month-of-wins.json', 'utf8'));
export const amountOf = (text: string): Cents => cents(Math.round(Number(text) * 100));
/** What the writer calls a car, by what the program calls it. */
export const WRITTEN_NAMES = new Map(WRITTEN.lots.map(({ id }, n) => [lotNumber(n), id]));

/** The folders as they stand on a day: what is dated later has not happened yet. */
export const foldersOn = (asOf: LocalDate): readonly PurchaseFolder[] =>
  WRITTEN.lots.flatMap((written, n) =>
    written.closed > asOf ? [] : [purchaseFolder(sourceOf(written, n, asOf), asOf)],
  );

function sourceOf(written: Written['lots'][number], n: number, asOf: LocalDate): FolderSource {
  const { id, venue, closed, price, fees, bills, floor, sale, canceled } = written;
  const lot = lotNumber(n);
  const until = <One extends { readonly date: LocalDate }>(some: readonly One[]) =>
    some.filter(({ date }) => date <= asOf);
  const kept =
    canceled?.kept === undefined
      ? []
      : [{ key: `${id}/kept`, cost: 'other' as const, label: 'Fees kept', cents: amountOf(canceled.kept) }];
  return {
    lot,
    facts: { lotNumber: id, venueName: venue },
    won: { hammer: amountOf(price), date: closed },
    expected: {
      lines: [{ key: 'fee-0', cost: 'fee', label: 'Fees', cents: amountOf(fees), from: 'The price list' }],
      retail: null,
      gross: null,
      financed: null,
      problems: [],
    },
    costs: [
      ...until(bills).flatMap(({ vendor, number, date, lines, for: what }) =>
        lines.map(([label, amount]) => ({
          ...{ key: `${number}/${label}`, entry: number, lot, label, cents: amountOf(amount), date, payee: vendor },
          ...{ document: { number }, paid: 'owed' as const },
          cost: what === 'venue' ? (label === 'hammer' ? ('hammer' as const) : ('fee' as const)) : what,
        })),
      ),
      ...until(WRITTEN.interest)
        .filter((one) => one.lot === id)
        .map(({ date, amount }) => ({
          ...{ key: `${id}/${date}`, label: 'Interest', cents: amountOf(amount), date },
          ...{ cost: 'interest' as const, paid: 'bank' as const },
        })),
      ...until(kept.map((line) => ({ ...line, date: canceled?.on ?? closed }))).map((line) => ({
        ...{ ...line, lot, entry: line.key, paid: 'owed' as const, payee: venue },
      })),
    ],
    payments: [
      ...until(WRITTEN.payments).flatMap(({ date, vendor, number, to }) =>
        to
          .filter(({ bill }) => bills.some((one) => one.number === bill))
          .map(({ bill, amount }) => ({
            ...{ key: `${number}/${bill}`, lot, bill, cents: amountOf(amount), date, payee: vendor },
            document: { number },
          })),
      ),
      ...(canceled?.refundOn && canceled.refundOn <= asOf
        ? [{ key: `${id}/refund`, cents: amountOf(`-${canceled.credit}`), date: canceled.refundOn, payee: venue }]
        : []),
    ],
    floor: until([
      ...(floor === undefined
        ? []
        : [{ key: `${id}/draw`, move: 'draw' as const, cents: amountOf(floor.amount), date: floor.advanceOn }]),
      ...(floor?.payoffOn
        ? [{ key: `${id}/payoff`, move: 'payoff' as const, cents: amountOf(floor.amount), date: floor.payoffOn }]
        : []),
    ]),
    outcome:
      sale !== undefined && sale.on <= asOf
        ? { lot, date: sale.on, priceCents: amountOf(sale.price), buyer: sale.kind }
        : undefined,
    papers: [],
    undoneOn: canceled !== undefined && canceled.on <= asOf ? canceled.on : undefined,
  };
}
