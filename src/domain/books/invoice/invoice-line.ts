import type { CostKind } from '../../accounts/cost-kind.ts';
import { type Cents, cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { Nature } from './nature-of.ts';

/** What a row says about which car it is for. */
export interface InvoiceCar {
  readonly vin?: string | undefined;
  readonly lotNumber?: string | undefined;
  readonly date?: LocalDate | undefined;
}

/** One amount of an invoice. */
export interface InvoiceLine extends InvoiceCar {
  /** Stands for the line among those of its file. */
  readonly id: string;
  /** Row of the file, counted from 1 as a spreadsheet does. */
  readonly row: number;
  readonly what: Nature;
  /** Of a cost. */
  readonly cost: CostKind;
  readonly label: string;
  /** Of a payment: what went to the sale, below zero what came back. */
  readonly cents: Cents;
  /** What it adds to what is owed, where the signs or the columns of the file say so. */
  readonly raises?: Cents | undefined;
  /** Why somebody should look at its day: the year was not written, or the day is still to come. */
  readonly dayDoubt?: 'year-guessed' | 'to-come' | undefined;
  /** The expected line that it stands for in other words. */
  readonly against?: string | undefined;
  /** Number of the invoice. */
  readonly number?: string | undefined;
}

/** The line as what somebody says it is. The direction that the file shows stays as it is. */
export function turnedInto(line: InvoiceLine, what: 'cost' | 'payment'): InvoiceLine {
  if (line.what === what) return line;
  const { raises } = line;
  const size = cents(Math.abs(line.cents));
  if (what === 'cost') return { ...line, what, cents: raises ?? size };
  return { ...line, what, cents: raises === undefined ? size : cents(-raises) };
}

/** What somebody said about a line that the file leaves open. */
export interface SaidOfLine {
  readonly what?: 'cost' | 'payment' | undefined;
  readonly date?: LocalDate | undefined;
}

/** A line with what was said of it. */
export function withSaid(line: InvoiceLine, said: SaidOfLine | undefined): InvoiceLine {
  if (said === undefined) return line;
  const turned = said.what === undefined ? line : turnedInto(line, said.what);
  return said.date === undefined ? turned : { ...turned, date: said.date, dayDoubt: undefined };
}
