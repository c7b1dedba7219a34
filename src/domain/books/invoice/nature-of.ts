import type { Cents } from '../../money/cents.ts';
import { plainWords } from '../../text/plain-words.ts';

/** What an amount of an invoice is: something the car costs, money that changed hands, or what only a person can say. */
export type Nature = 'cost' | 'payment' | 'unsure';

/** Words of money that changes hands, and of the ways it does. Alone they prove nothing: "Wire transfer fee" is a fee. */
const MONEY =
  /\b(?:payments?|paid|wires?|checks?|ck|ach|eft|deposits?|received|remitted|remittance|refund\w*|returned|payoff)\b/;
/** Money that went the other way than it was meant to. */
const BACK = /\b(?:refund\w*|returned|reversed|reversal|not honored|nsf|bounced|paid back|money back)\b/;
/** What is charged for, whatever other words stand beside it. */
const CHARGE =
  /\b(?:fees?|charges?|surcharge|handling|processing|convenience|interest|premium|tax|vehicle|sale of|hammer|price|certificate|title|advance|purchase|transport\w*|haul\w*)\b/;
/** A charge that is taken back or lowered. */
const LOWERED = /\b(?:waived?|waiver|credit|adjust\w*|removed|reversed|reversal|allowance|discount|refund\w*|rebate)\b/;

/**
 * What an amount is, by the direction in which it moves what is owed, and only then by its words. Where they do not agree
 * it is unsure: a payment that is taken for a cost, or the other way round, is wrong by twice its amount.
 * @param raises what it adds to what is owed, below zero what it takes off; undefined where the file shows no direction
 */
export function natureOf(label: string, raises: Cents | undefined): Nature {
  const words = plainWords(label);
  const [money, charge] = [MONEY.test(words), CHARGE.test(words)];
  if (!money) return 'cost';
  if (raises === undefined) return charge ? 'cost' : 'unsure';
  if (raises < 0) {
    if (charge) return LOWERED.test(words) ? 'cost' : 'unsure';
    return BACK.test(words) ? 'unsure' : 'payment';
  }
  if (charge) return 'cost';
  return BACK.test(words) ? 'payment' : 'unsure';
}

/** Whether a payment is money that came back: a refund, or a payment that the bank did not honor. */
export const cameBack = (label: string): boolean => BACK.test(plainWords(label));
