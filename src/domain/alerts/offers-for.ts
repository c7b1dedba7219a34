import { MINUTE } from '../time/units.ts';
import { type AlertLot, needsBid, nextClose } from './alert-lot.ts';
import type { Offer } from './offer.ts';

/** What a sale usually adds when a bid comes in at the end, where the user has not told of another. */
export const USUAL_EXTENSION = 5;

/**
 * The two answers worth a button: browsers show no more. Early on, to put it off; in the last minutes, that the time was
 * extended; and beside it that the bid was made, else that somebody else has it or that it is done. After the close, the
 * commonest result, or that it goes on. In a team, what nobody has is answered first of all with “I have it”: the others wait for it.
 */
export function offersFor(
  lot: AlertLot,
  open: boolean,
  { now, people, me }: { readonly now: number; readonly people: readonly string[]; readonly me?: string | undefined },
): readonly Offer[] {
  const extended: Offer = { do: 'extended', minutes: USUAL_EXTENSION, from: lot.close };
  if (!open) return [{ do: 'lost' }, extended];
  const left = nextClose(lot, now) - now;
  const to = people.find((person) => person !== lot.handedTo);
  const wanting = needsBid(lot);
  const done: Offer = to === undefined || !wanting ? { do: 'done' } : { do: 'hand-over', to };
  const second = (wanting ? lot.bid.offer : null) ?? done;
  if (me !== undefined && wanting && lot.mine !== true) return [{ do: 'have-it', as: me }, second];
  if (left > 12 * MINUTE) return [{ do: 'put-off', minutes: 10 }, second];
  return [extended, second];
}
