import { useEffect, useState } from 'preact/hooks';
import { REASON_WORDS } from '../../../src/domain/dispute/reason-words.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { earlierLives, laterLives } from '../../../src/domain/sale/earlier-lives.ts';
import { sayEnd } from '../../../src/domain/sale/result-words.ts';
import { sayDate } from '../../../src/domain/time/say-time.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { isCanceled } from '../../../src/folds/bid-given.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { sayOutcome } from '../../../src/journal/happenings/after-sale-words.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';

/** The same car at other sales, with what was learned then. Nothing when it was never seen before. */
export function EarlierLives({ lot }: { lot: LotState }) {
  const { earlier, later } = useLives(lot);
  if (earlier.length + later.length === 0) return null;
  return (
    <section class="panel stack">
      <h2>{earlier.length > 0 ? 'This car was at a sale before' : 'This car was sold again'}</h2>
      <ul class="plain-list">
        {[...later, ...earlier].map((life) => (
          <Life key={life.id} life={life} />
        ))}
      </ul>
    </section>
  );
}

/** The same car by its VIN, or by what a dispute says of the lot that it was offered as again. */
function useLives(lot: LotState) {
  const { store, lots, say } = useWorkspace();
  const [found, setFound] = useState<readonly LotState[]>([]);
  const [linked, setLinked] = useState<readonly LotState[]>([]);
  const { vin } = lot.facts;
  // With `lots`, because another life of the same car may have come in or ended.
  useEffect(() => {
    let current = true;
    const fail = (error: unknown) => say(String(error));
    if (vin === undefined || vin === '') setFound([]);
    else store.lotsByVin(vin).then((all) => current && setFound(all.length > 1 ? all : []), fail);
    const next = offeredAgainAs(lot);
    Promise.all([store.disputedLots(), ...next.map((id) => store.lot(id))]).then(([disputed, ...again]) => {
      const before = disputed.filter((one) => offeredAgainAs(one).includes(lot.id));
      if (current) setLinked([...before, ...again.flatMap((one) => one ?? [])]);
    }, fail);
    return () => {
      current = false;
    };
  }, [store, vin, lot, lots, say]);
  const all = [...new Map([...found, ...linked].map((one) => [one.id, one])).values()];
  const isBefore = (one: LotState) => offeredAgainAs(one).includes(lot.id);
  const isAfter = (one: LotState) => offeredAgainAs(lot).includes(one.id);
  return {
    earlier: unique([...earlierLives(lot, all), ...all.filter(isBefore)]),
    later: unique([...laterLives(lot, all), ...all.filter(isAfter)]),
  };
}

const unique = (lives: readonly LotState[]): LotState[] => [...new Set(lives)];

/** The lots as which disputes say that it was offered again. */
const offeredAgainAs = ({ after }: LotState): LotId[] =>
  (after?.disputes ?? []).flatMap(({ outcome }) => outcome?.newLot ?? []);

function Life({ life }: { life: LotState }) {
  const { setup } = useWorkspace();
  const { facts, sale, addedAt, dropped, after } = life;
  const learned = [
    facts.miles !== undefined && `${facts.miles.toLocaleString('en-US')} mi`,
    typeof sale?.result?.maxBidCents === 'number' && `our max bid then ${formatMoney(sale.result.maxBidCents)}`,
    ...(facts.claims ?? [])
      .filter(({ evidence }) => evidence === 'refuted')
      .map(({ statement }) => `found untrue: ${statement}`),
    (facts.recon ?? []).length > 0 && `${(facts.recon ?? []).length} recon lines`,
    facts.notes && `notes: ${facts.notes}`,
    ...(after?.disputes ?? []).map(
      ({ reason, outcome }) =>
        `disputed: ${REASON_WORDS[reason].toLowerCase()}${outcome === undefined ? ', still open' : `, ${sayOutcome(outcome)}`}`,
    ),
    dropped && 'removed from your list',
  ].filter(Boolean);
  return (
    <li>
      <a href={`#/${dropped ? 'history' : 'lot'}/${life.id}`}>
        {sayDate(dateIn(setup.store.zone, facts.close?.instant ?? addedAt))}
        {(facts.venueName ?? facts.venueId) && `, ${facts.venueName ?? facts.venueId}`}
      </a>
      : <strong>{sale?.result ? sayEnd(sale.result.result, isCanceled(life)) : 'no result recorded'}</strong>
      {learned.length > 0 && <span class="quiet"> · {learned.join(' · ')}</span>}
    </li>
  );
}
