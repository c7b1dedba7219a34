import { goesBack } from '../../after-sale/win-money.ts';
import type { LotFacts, LotId } from '../../lot/lot.ts';
import { type Cents, cents, sumCents, ZERO } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { CarOutcome, PaperNote } from '../booking.ts';
import type { CarCost, CarFloorMove, CarPayment } from '../post/lot-transactions.ts';
import { type ComparedLine, compareLines } from './compare-lines.ts';
import type { ExpectedPurchase } from './expected.ts';
import { missingFrom } from './missing-papers.ts';

/** What a folder is made from. */
export interface FolderSource {
  readonly lot: LotId;
  readonly facts: LotFacts;
  /** What the result says; null when it no longer says that the lot was won. */
  readonly won: { readonly hammer: Cents; readonly date: LocalDate; readonly bidder?: string | undefined } | null;
  readonly expected: ExpectedPurchase | null;
  readonly costs: readonly (CarCost & {
    readonly against?: string | undefined;
    readonly dispute?: string | undefined;
  })[];
  readonly payments: readonly CarPayment[];
  readonly floor: readonly CarFloorMove[];
  readonly outcome?: CarOutcome | undefined;
  readonly papers: readonly PaperNote[];
  /** The day on which the car came, where that was noted. */
  readonly arrivedOn?: LocalDate | undefined;
  /** Price and fees that are owed though the sale has not billed them yet. */
  readonly notBilled?: Cents | undefined;
  /** Money by which disputes ended and which is not booked yet. */
  readonly settlements?: readonly OpenSettlement[] | undefined;
  /** The day on which the purchase was canceled. */
  readonly undoneOn?: LocalDate | undefined;
}

/** Money by which a dispute ended, as far as it is not booked. */
export interface OpenSettlement {
  /** What stands for the dispute. */
  readonly dispute: string;
  /** To us; below zero when we pay, or when more is booked than was agreed. */
  readonly cents: Cents;
  readonly date: LocalDate;
  /** How it ended, in words; undefined once it is open again. */
  readonly ended?: string | undefined;
}

/** Where a purchase stands. */
export type FolderStage = 'in-stock' | 'sold' | 'undone' | 'not-won';

/** A won lot's papers: expected beside actual, what is owed, what is missing. */
export interface PurchaseFolder extends FolderSource {
  readonly stage: FolderStage;
  readonly lines: readonly ComparedLine[];
  readonly expectedCents: Cents | null;
  /** Every bill so far. */
  readonly actualCents: Cents;
  /** What is still to be paid for bills that are booked as owed; below zero when more was paid. */
  readonly owed: Cents;
  /** What is still to be paid in all: that, what the sale has not billed yet, less what disputes bring. */
  readonly open: Cents;
  /** Principal that the lender still has in the car. */
  readonly floorOwed: Cents;
  /** Price less every bill so far; null while it is not sold. */
  readonly gross: Cents | null;
  /** What is not there yet, in sentences. */
  readonly missing: readonly string[];
  /** Whether a line needs checking. */
  readonly look: boolean;
}

/** @param today in the store's zone */
export function purchaseFolder(source: FolderSource, today: LocalDate): PurchaseFolder {
  const { costs, payments, floor, outcome, undoneOn, won, expected } = source;
  const stage: FolderStage =
    won === null ? 'not-won' : undoneOn !== undefined ? 'undone' : outcome === undefined ? 'in-stock' : 'sold';
  const lines = compareLines(expected?.lines ?? [], costs);
  const actualCents = total(costs);
  const drawn = total(floor.filter(({ move }) => move === 'draw'));
  const billed = total(costs.filter(({ paid }) => paid === 'owed'));
  const returned = undoneOn === undefined ? ZERO : total(costs.filter(goesBack));
  const owed = cents(billed - returned - drawn - total(payments));
  const open = cents(owed + (source.notBilled ?? 0) - total(source.settlements ?? []));
  return {
    ...source,
    stage,
    lines,
    expectedCents: expected && total(expected.lines),
    actualCents,
    owed,
    open,
    floorOwed: cents(drawn - total(floor.filter(({ move }) => move === 'payoff'))),
    gross: outcome === undefined || stage !== 'sold' ? null : cents(outcome.priceCents - actualCents),
    missing: missingFrom(source, stage, open, today),
    look: lines.some((line) => line.look),
  };
}

const total = (some: readonly { readonly cents: Cents }[]): Cents => sumCents(some.map((one) => one.cents));
