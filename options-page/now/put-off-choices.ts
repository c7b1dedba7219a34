import { putOffUntil } from '../../src/domain/alerts/lot-calls.ts';
import { roughly } from '../../src/domain/alerts/say-late.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';

export interface PutOffChoice {
  readonly minutes: number;
  readonly words: string;
}

const CHOICES = [5, 15] as const;

/**
 * By how much a call can be put off, in the words of a button. Nearer to the close than that it comes back at the last
 * call that was planned, or a minute before: then that is what the button says, and there is only one of them.
 * @param leads the lot's calls, in minutes before its close, the earliest first
 */
export function putOffChoices(
  lot: { readonly close: Instant },
  leads: readonly number[],
  now: Instant,
): readonly PutOffChoice[] {
  const choices: PutOffChoice[] = [];
  for (const minutes of CHOICES) {
    const until = putOffUntil(lot, leads, minutes, now);
    if (until === null) continue;
    const whole = until === now + minutes * MINUTE;
    choices.push({ minutes, words: whole ? `in ${minutes} min` : `${roughly(lot.close - until)} before` });
    if (!whole) break;
  }
  return choices;
}
