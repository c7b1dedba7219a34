import type { LotAct } from '../acts/act.ts';
import type { Done } from '../acts/do-act.ts';
import type { Offer } from '../domain/alerts/offer.ts';
import { lotTitle } from '../domain/lot/car-name.ts';
import { type LotId, lotIdSchema } from '../domain/lot/lot.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { doLotAct } from '../views/lots/do-lot-act.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { plannedBids } from '../views/plan/kept-plan.ts';
import type { Lookout } from './look-again.ts';
import { lotOfNotice, readNoticeId } from './notice-id.ts';
import { clearNotices } from './speak.ts';
import type { World } from './world.ts';

/**
 * A button on a notice was pressed: keeps what it says in the journal, takes the notice off the screen and plans again.
 * What can't be kept, or has to be answered first, is said in a notice of its own that leads to the lot, so that nobody
 * believes it was.
 */
export async function answerNotice(world: World, { lookAgain }: Lookout, id: string, index: number): Promise<void> {
  const notice = readNoticeId(id);
  const lotId = lotIdSchema.safeParse(lotOfNotice(notice));
  const offer = notice.offers[index];
  if (!lotId.success || offer === undefined) return;
  const said = await keep(world, lotId.data, offer);
  if (said === null) await clearNotices(world, (about) => about === notice.about);
  else await world.showNotice({ id: `not-kept ${notice.route}`, ...said, loudness: 'loud', buttons: [] });
  await lookAgain();
}

interface Unkept {
  readonly title: string;
  readonly body: string;
}

/** Null when it was kept, or was known already; else what to say. */
async function keep(world: World, id: LotId, offer: Offer): Promise<Unkept | null> {
  const opened = await world.openStore();
  if (!opened.ok) return { title: NOT_SAVED, body: opened.message };
  const store = opened.value;
  try {
    const lot = await store.lot(id);
    if (lot === null) return { title: NOT_SAVED, body: 'This lot is no longer on your list.' };
    const [kept, plan] = await Promise.all([store.setup(), store.plan()]);
    const setup = wholeSetup(kept, world.zone());
    const standings = standingsUnder(setup, plannedBids(plan?.plan));
    const done = await doLotAct(store, lot, actOfOffer(offer), { setup, standings, now: world.now() });
    return unkept(done, lotTitle(lot.facts));
  } finally {
    store.close();
  }
}

const NOT_SAVED = 'That was not saved';

function unkept(done: Done, car: string): Unkept | null {
  switch (done.as) {
    case 'ask':
      return { title: 'Not saved yet: answer this first', body: `${car}: ${done.question.words}` };
    case 'refuse':
      return { title: NOT_SAVED, body: done.message };
    default:
      return null;
  }
}

/** A button as the act it sends. It may be older than what is known by now, so it vouches for nothing. */
function actOfOffer(offer: Offer): LotAct {
  switch (offer.do) {
    case 'lost':
      return { do: 'ended', result: { ended: 'lost' }, corrects: null };
    case 'bid':
      return { do: 'bid', how: 'proxy', cents: offer.cents, offered: true };
    default:
      return offer;
  }
}
