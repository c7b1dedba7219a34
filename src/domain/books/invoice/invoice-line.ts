import type { CostKind } from '../../accounts/cost-kind.ts';
import type { Cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';

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
  readonly what: 'cost' | 'payment';
  /** Of a cost. */
  readonly cost: CostKind;
  readonly label: string;
  /** Of a payment: what went to the sale, below zero what came back. */
  readonly cents: Cents;
  /** Number of the invoice. */
  readonly number?: string | undefined;
}
