import { MINUTE } from '../time/units.ts';
import { type AlertLot, needsBid } from './alert-lot.ts';
import type { Offer } from './offer.ts';

/** What a sale usually adds when a bid comes in at the end, where the user has not told of another. */
export const USUAL_EXTENSION = 5;

/**
 * The two answers worth a button: browsers show no more. Early on, to put it off or hand it over; in the last minutes, that
 * the time was extended or that it is done; after the close, the commonest result, or that it goes on.
 */
export function offersFor(
  lot: AlertLot,
  open: boolean,
  { now, people }: { readonly now: number; readonly people: readonly string[] },
): readonly Offer[] {
  const extended: Offer = { do: 'extended', minutes: USUAL_EXTENSION, from: lot.close };
  if (!open) return [{ do: 'lost' }, extended];
  const left = lot.close - now;
  const to = people.find((person) => person !== lot.handedTo);
  const done: Offer = to === undefined || !needsBid(lot) ? { do: 'done' } : { do: 'hand-over', to };
  if (left > 12 * MINUTE) return [{ do: 'put-off', minutes: 10 }, done];
  return [extended, done];
}
