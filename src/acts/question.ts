import { parseMoney } from '../domain/money/parse-money.ts';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import type { LotAct, QuestionCode } from './act.ts';

/** What has to be answered before something is kept, as plain data that any screen can draw. */
export interface Question {
  readonly code: QuestionCode | 'state';
  readonly words: string;
  /** The likeliest first. */
  readonly choices: readonly Choice[];
}

/** One answer. */
export interface Choice {
  readonly words: string;
  /**
   * `do`: the act is sent; `edit`: back to what was typed, which is still there; `leave`: nothing is kept; `go`: it is
   * settled on the lot's worksheet.
   */
  readonly leads: 'do' | 'edit' | 'leave' | 'go';
  readonly act?: LotAct | undefined;
  /** What is typed with it. */
  readonly fill?: Fill | undefined;
}

export interface Fill {
  readonly what: 'reason' | 'amount' | 'person';
  readonly label: string;
  readonly optional?: boolean;
}

export const LONGEST = { reason: 400, person: 80, amount: 60 } as const;

/** The act that an answer sends, with what was typed for it. Refused with a sentence when that is missing or can't be read. */
export function answered({ act, fill }: Choice, typed = ''): Outcome<LotAct> {
  if (act === undefined) return refuse('no-act', 'That answer changes nothing.');
  if (fill === undefined) return ok(act);
  const text = typed.trim();
  if (text === '') return fill.optional ? ok(act) : refuse('empty', EMPTY[fill.what]);
  if (text.length > LONGEST[fill.what]) return refuse('too-long', `Keep it to ${LONGEST[fill.what]} characters.`);
  return fill.what === 'amount' ? withAmount(act, text) : ok(withText(act, fill.what, text));
}

const EMPTY = {
  reason: 'Give a reason, so that it can be told later.',
  amount: 'Type the amount first.',
  person: 'Say who it was.',
} as const;

function withText(act: LotAct, what: 'reason' | 'person', text: string): LotAct {
  if (act.do === 'bid') return what === 'reason' ? { ...act, why: text } : { ...act, by: text };
  if (act.do === 'accept-risk') return { ...act, why: text };
  return act.do === 'ended' && what === 'person' ? { ...act, bidder: text, liveBy: text } : act;
}

function withAmount(act: LotAct, text: string): Outcome<LotAct> {
  const amount = parseMoney(text);
  if (!amount.ok) return amount;
  if (amount.value < 0) return refuse('below-zero', 'A price is not below $0.');
  if (act.do === 'price') return ok({ ...act, cents: amount.value });
  return act.do === 'bid' ? ok({ ...act, price: amount.value }) : ok(act);
}
