import type { Receipt } from '../../acts/act.ts';
import { frontPage, picturePage } from '../../browser/page-picture.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { instant } from '../../domain/time/instant.ts';
import type { Store } from '../../store/store.ts';

/** What shows where something was done, and what to say of it. */
export interface PageReceipt {
  readonly receipt: Receipt;
  /** Empty when there is nothing to say. */
  readonly words: string;
}

/**
 * The address of the page in front, and if wanted a picture of it, which is kept with the lot. The receipt comes first in
 * worth: when there can be no picture it is kept without, and the answer says so.
 */
export async function receiptOfPage(store: Store, lot: LotId, withPicture: boolean): Promise<PageReceipt> {
  const page = await frontPage();
  if (page === null) return { receipt: {}, words: '' };
  if (!withPicture) return { receipt: { page }, words: '' };
  const picture = await keepPicture(store, lot, instant(Date.now()), page.title);
  if (!picture.ok) return { receipt: { page }, words: `Saved without a picture. ${picture.message}` };
  const { hash, warning } = picture.value;
  return {
    receipt: { page, picture: hash },
    words: ['Saved with a picture.', warning].filter(Boolean).join(' '),
  };
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
