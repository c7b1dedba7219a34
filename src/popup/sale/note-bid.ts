import { frontPage, picturePage } from '../../browser/page-picture.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok } from '../../domain/outcome.ts';
import type { BidAction } from '../../domain/sale/bid-action.ts';
import { sayAction } from '../../domain/sale/result-words.ts';
import { instant } from '../../domain/time/instant.ts';
import type { Store } from '../../store/store.ts';

/**
 * Keeps a receipt with the address of the page in front, and if wanted a picture of it. The receipt comes first in worth: when
 * there can be no picture it is kept without, and the answer says so.
 */
export async function noteBidOnPage(
  store: Store,
  lot: LotId,
  bid: Pick<BidAction, 'action' | 'cents'>,
  withPicture: boolean,
): Promise<Outcome<string>> {
  const page = await frontPage();
  const at = instant(Date.now());
  const picture = withPicture && page !== null ? await keepPicture(store, lot, at, page.title) : null;
  const written = await store.noteBid(lot, {
    ...bid,
    at,
    ...(page !== null && { page }),
    ...(picture?.ok && { picture: picture.value.hash }),
  });
  if (!written.ok) return written;
  const words = sayAction({ ...bid, at });
  if (picture === null) return ok(`${words}: saved.`);
  if (!picture.ok) return ok(`${words}: saved without a picture. ${picture.message}`);
  return ok([`${words}: saved with a picture.`, picture.value.warning].filter(Boolean).join(' '));
}

async function keepPicture(store: Store, lot: LotId, at: number, title: string) {
  const picture = await picturePage();
  if (!picture.ok) return picture;
  const name = `page ${new Date(at).toISOString().replace(/[:.]/g, '-')}.png`;
  return store.keepAttachment(lot, {
    bytes: picture.value,
    name,
    about: 'page-picture',
    ...(title && { note: title }),
  });
}
