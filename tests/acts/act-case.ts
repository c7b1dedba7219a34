import { readFileSync } from 'node:fs';
import type { LotAct } from '../../src/acts/act.ts';
import type { Circumstances, Decision } from '../../src/acts/circumstances.ts';
import { decide } from '../../src/acts/decide.ts';
import { answered } from '../../src/acts/question.ts';
import { startingSetup } from '../../src/domain/setup/starting-setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { Change } from '../../src/journal/make-entry.ts';
import { bidsUnder, incrementsUnder } from '../../src/views/lots/bids.ts';
import { type BidEvent, BidHistory, BOISE, closeAt, dollars, resultOf } from '../views/lots/bid-history.ts';

interface Noted {
  readonly amount?: number;
  readonly at: string;
  readonly by?: string;
}

/** One act at a door, as the fixture writes it. */
export interface ActCase {
  readonly id: string;
  readonly door: string;
  readonly why: string;
  readonly before: {
    readonly now: string;
    readonly close: string;
    readonly otherClose?: string;
    readonly maxBid: number;
    readonly maxBidAtClose?: number;
    readonly increment: number;
    readonly priceNow?: Noted;
    readonly proxy?: Noted;
    readonly result?: Noted & { readonly outcome: string; readonly maxBidThen?: number; readonly whoBid?: string };
    readonly month?: string;
  };
  readonly expect: {
    readonly asks?: string;
    readonly choices?: readonly string[];
    readonly refuses?: string;
    readonly notOffered?: string;
    readonly notes?: readonly ExpectedNote[];
    readonly ifYes?: readonly ExpectedNote[];
    readonly ifNo?: readonly ExpectedNote[];
    readonly stateAfter?: { readonly state?: string; readonly at?: number; readonly loud?: boolean };
  };
}

export interface ExpectedNote {
  readonly kind: string;
  readonly amount?: number;
  readonly by?: string;
  readonly outcome?: string;
  readonly why?: string | null;
  readonly early?: boolean;
  readonly maxBidThen?: number;
  readonly whoBid?: string;
  readonly corrects?: boolean;
  readonly proxyWasIn?: boolean;
  readonly typedAfterClose?: boolean;
  readonly was?: number;
  readonly overBy?: number;
}

export const actCases: readonly ActCase[] = JSON.parse(
  readFileSync(new URL('../fixtures/bids/acts.json', import.meta.url), 'utf8'),
);

/** A lot as it is before an act, with a clock and a max bid. */
export class ActScene {
  readonly history: BidHistory;
  readonly circumstances: Circumstances;
  readonly bids: ReturnType<typeof bidsUnder>;

  constructor({ before }: Pick<ActCase, 'before'>, author = 'manager') {
    const added = new Date(Date.parse(before.now) - 7 * 86_400_000).toISOString();
    const events: BidEvent[] = [
      {
        at: added,
        kind: 'lot-added',
        close: before.close,
        increment: before.increment,
        ...(before.otherClose !== undefined && { otherClose: before.otherClose, doubtful: true }),
      },
    ];
    if (before.priceNow) events.push({ ...before.priceNow, kind: 'price-now', from: 'page' });
    if (before.proxy) events.push({ ...before.proxy, kind: 'proxy-placed' });
    this.history = new BidHistory(events);
    this.history.maxBid = dollars(before.maxBid);
    if (before.result) this.#end(before.result);
    const setup = startingSetup(BOISE);
    this.bids = bidsUnder(setup, this.history.standingOf);
    const stepsOf = incrementsUnder(setup);
    const now = instant(Date.parse(before.now));
    this.circumstances = {
      now,
      setup,
      author,
      people: ['buyer', 'manager'],
      work: (lot) => ({
        maxBid: this.history.maxBid,
        increments: stepsOf(lot),
        bid: bidsUnder(setup, this.history.standingOf).at(lot, now),
      }),
      monthClosed: before.month === 'closed',
      ...(before.maxBidAtClose !== undefined && { maxBidAtClose: { cents: dollars(before.maxBidAtClose) } }),
    };
  }

  get lot(): LotState {
    return this.history.lot;
  }

  /** What would become of an act. */
  decide(act: LotAct): Decision {
    return decide(this.lot, act, this.circumstances);
  }

  /** Does an act; what it writes is there afterwards. */
  do(act: LotAct): Decision {
    const decision = this.decide(act);
    if (decision.as === 'write') this.write(decision.changes);
    return decision;
  }

  /** Answers a question with the choice of these words. */
  answer(decision: Decision, words: string, typed?: string): Decision {
    if (decision.as !== 'ask') throw new Error(`nothing was asked: ${JSON.stringify(decision)}`);
    const choice = decision.question.choices.find((one) => one.words === words);
    if (choice === undefined) throw new Error(`no such answer: ${words}`);
    if (choice.leads !== 'do') return { as: 'nothing', message: choice.leads };
    const act = answered(choice, typed);
    return act.ok ? this.do(act.value) : { as: 'refuse', message: act.message };
  }

  write(changes: readonly Change[]): void {
    for (const { happening, subject } of changes)
      this.history.write(happening, this.circumstances.now, this.circumstances.author, subject);
  }

  #end({ outcome, amount, at, by, maxBidThen, whoBid }: NonNullable<ActCase['before']['result']>): void {
    this.history.write(
      {
        kind: 'result-noted',
        result: resultOf(outcome, amount),
        at: closeAt(instant(Date.parse(at))).instant,
        ...(maxBidThen !== undefined && { maxBidCents: dollars(maxBidThen) }),
        ...(whoBid !== undefined && { bidder: whoBid }),
      },
      instant(Date.parse(at)),
      by,
    );
  }
}

/** An entry in the fixture's words. */
export function noteOf({ happening }: Change, { author }: Circumstances): ExpectedNote | null {
  switch (happening.kind) {
    case 'bid-noted': {
      const { action, cents, by = author, why, noted } = happening.bid;
      return {
        kind: action,
        ...(cents !== undefined && { amount: cents / 100 }),
        by,
        ...(why !== undefined && { why }),
        ...(noted === 'after-close' && { typedAfterClose: true }),
      };
    }
    case 'result-noted': {
      const { result, maxBidCents, bidder, early, bidWasIn, corrects } = happening;
      const amount = 'hammerCents' in result ? result.hammerCents : undefined;
      return {
        kind: 'result',
        by: author,
        outcome: result.ended === 'not-sold' ? 'no-sale' : result.ended,
        ...(amount !== undefined && { amount: amount / 100 }),
        ...(typeof maxBidCents === 'number' && { maxBidThen: maxBidCents / 100 }),
        ...(bidder !== undefined && { whoBid: bidder }),
        ...(early && { early }),
        ...(bidWasIn !== undefined && { proxyWasIn: bidWasIn }),
        ...(corrects !== undefined && { corrects: true }),
      };
    }
    case 'risk-accepted': {
      const { cents, maxBidCents, why } = happening;
      return {
        kind: 'risk-accepted',
        amount: cents / 100,
        by: author,
        why,
        ...(maxBidCents !== null && { overBy: (cents - maxBidCents) / 100 }),
      };
    }
    case 'close-extended':
      return { kind: 'close-moved', by: author };
    default:
      return null;
  }
}
