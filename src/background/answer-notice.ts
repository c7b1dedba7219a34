import { changeForAct } from '../acts/lot-acts.ts';
import type { Offer } from '../domain/alerts/offer.ts';
import { type LotId, lotIdSchema } from '../domain/lot/lot.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import type { Lookout } from './look-again.ts';
import { lotOfNotice, readNoticeId } from './notice-id.ts';
import { clearNotices } from './speak.ts';
import type { World } from './world.ts';

/**
 * A button on a notice was pressed: keeps what it says in the journal, takes the notice off the screen and plans again.
 * What can't be kept is said in a notice of its own, so that nobody believes it was.
 */
export async function answerNotice(world: World, { lookAgain }: Lookout, id: string, index: number): Promise<void> {
  const notice = readNoticeId(id);
  const lotId = lotIdSchema.safeParse(lotOfNotice(notice));
  const offer = notice.offers[index];
  if (!lotId.success || offer === undefined) return;
  const refused = await keep(world, lotId.data, offer);
  if (refused === null) await clearNotices(world, (about) => about === notice.about);
  else
    await world.showNotice({
      id: `not-kept ${notice.route}`,
      title: 'That was not saved',
      body: refused,
      loudness: 'loud',
      buttons: [],
    });
  await lookAgain();
}

/** Null when it was kept, else why not. */
async function keep(world: World, id: LotId, offer: Offer): Promise<string | null> {
  const opened = await world.openStore();
  if (!opened.ok) return opened.message;
  const store = opened.value;
  try {
    const lot = await store.lot(id);
    if (lot === null) return 'This lot is no longer on your list.';
    const setup = wholeSetup(await store.setup(), world.zone());
    const { of, bids } = standingsUnder(setup);
    const { maxBid } = of(lot);
    const { loud } = bids.open(lot);
    const change = changeForAct(lot, offer, { now: world.now(), rules: setup.alerts, maxBid, loud });
    if (!change.ok) return change.message;
    const written = await store.append([change.value]);
    return written.ok ? null : written.message;
  } finally {
    store.close();
  }
}
