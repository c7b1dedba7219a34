import type { LotAct } from '../../../src/acts/act.ts';
import { lotName } from '../../../src/domain/lot/car-name.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Pending } from '../../../src/ui/ask/use-asked-act.ts';
import type { Workspace } from '../../../src/ui/workspace.ts';
import { bidOffer } from '../../../src/views/lots/act-offers.ts';
import { stopOfStanding } from '../../../src/views/lots/bids.ts';
import { doLotAct } from '../../../src/views/lots/do-lot-act.ts';
import type { Standings } from '../../../src/views/lots/standing.ts';

/** Notes what a row offers with one press. Resolves to what has to be answered first, or null when it is settled. */
export async function offerInRow(
  lot: LotState,
  standings: Standings,
  { store, setup, say }: Pick<Workspace, 'store' | 'setup' | 'say'>,
): Promise<Pending | null> {
  const now = instant(Date.now());
  const offer = bidOffer(standings.bids.at(lot, now), stopOfStanding(standings.of(lot)));
  if (offer === null) return null;
  const act: LotAct = { do: 'bid', how: 'proxy', cents: offer.cents, offered: true };
  const done = await doLotAct(store, lot, act, { setup, standings, now });
  const name = lotName(lot.facts);
  if (done.as === 'kept') say(`${name}: ${done.words}.`, ...done.entries);
  else if (done.as === 'nothing') say(`${name}: ${done.message}`);
  else return done.as === 'ask' ? { act, question: done.question } : { act, why: done.message };
  return null;
}
