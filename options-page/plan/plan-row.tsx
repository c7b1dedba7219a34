import type { LotAct } from '../../src/acts/act.ts';
import { offerWords } from '../../src/domain/alerts/offer.ts';
import { bidWords } from '../../src/domain/bid/bid-words.ts';
import { lotName, lotTitle } from '../../src/domain/lot/car-name.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { PlanChoice } from '../../src/domain/plan/plan-lot.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { bidOffer } from '../../src/views/lots/act-offers.ts';
import { stopOfStanding } from '../../src/views/lots/bids.ts';
import type { Standing, Standings } from '../../src/views/lots/standing.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import type { PlanLine } from './plan-table.tsx';

interface PlanRowProps {
  readonly line: PlanLine;
  readonly standings: Standings;
  readonly now: Instant;
  readonly onAct: (lot: LotState, act: LotAct) => void;
}

const SAYS: readonly { readonly choice: PlanChoice; readonly words: string; readonly title: string }[] = [
  { choice: 'pinned', words: 'Pin', title: 'I want this one: hold its money (P)' },
  { choice: 'skipped', words: 'Skip', title: 'No bid on this one (S)' },
  { choice: 'plan-ignored', words: 'Ignore plan', title: 'Its max bid stands, whatever the plan says (I)' },
];

/** One lot: when, which car, what to bid, why, how likely, what it takes. */
export function PlanRow({ line: { lot, row, together }, standings, now, onAct }: PlanRowProps) {
  const { setup } = useWorkspace();
  const { facts, planChoice } = lot;
  const bid = standings.bids.at(lot, now);
  const standing = standings.of(lot);
  const offer = bid.is === 'ended' ? null : bidOffer(bid, stopOfStanding(standing));
  const name = lotName(facts);
  return (
    <tr id={`plan-${lot.id}`} class={planChoice ? `plan-row ${planChoice}` : 'plan-row'}>
      <td class="plan-close">
        {row.close === null ? 'no close' : sayTime(row.close, setup.store.zone)}
        {together > 1 && <span class="small plan-together">{together} close together</span>}
      </td>
      <td class="plan-car">
        <a href={`#/lot/${lot.id}`}>{lotTitle(facts)}</a>
        <span class="small quiet">
          {[facts.venueName ?? facts.venueId, facts.lotNumber && `lot ${facts.lotNumber}`].filter(Boolean).join(' · ')}
        </span>
        {bid.is !== 'none' && <span class={bid.loud ? 'small act' : 'small'}>{bidWords(bid)}</span>}
      </td>
      <td class="number plan-bid">
        <span class="plan-figure">{figureWords(standing)}</span>
        <span class="small quiet">max {row.maxBid === null ? 'none' : formatMoney(row.maxBid)}</span>
      </td>
      <td class="plan-why">
        {row.sentence}
        {!row.fitsBesideProxies && row.plannedBid !== null && row.reason.is !== 'proxy' && (
          <span class="small"> Place it late: with the bids that are in it would not fit the purse.</span>
        )}
      </td>
      <td class="plan-chance">
        {row.chance === null ? (
          row.plannedBid !== null && <span class="missing">not known yet</span>
        ) : (
          <>
            {row.chance.words}
            <span class="small quiet">{countWords(row.chance.closings, 'closing', 'closings')}</span>
          </>
        )}
      </td>
      <td class="number plan-takes">
        {row.takes === null ? (
          ''
        ) : (
          <>
            {wholeDollars(row.takes.cash)}
            {row.takes.line > 0 && <span class="small quiet">+ {wholeDollars(row.takes.line)} line</span>}
          </>
        )}
      </td>
      <td class="no-print plan-says">
        {offer !== null && (
          <button
            type="button"
            onClick={() => onAct(lot, { do: 'bid', how: 'proxy', cents: offer.cents, offered: true })}
          >
            {offerWords(offer)}
            <span class="visually-hidden">, {name}</span>
          </button>
        )}
        {SAYS.map(({ choice, words, title }) => (
          <button
            key={choice}
            type="button"
            title={title}
            aria-pressed={planChoice === choice}
            onClick={() => onAct(lot, { do: 'plan', choice: planChoice === choice ? null : choice })}
          >
            {words}
            <span class="visually-hidden">, {name}</span>
          </button>
        ))}
      </td>
    </tr>
  );
}

/** What it takes, rounded up: what is there must not look like enough where it is not. */
const wholeDollars = (amount: Cents): string => formatMoney(cents(Math.ceil(amount / 100) * 100));

/** What the user said of it since the plan was made holds at once. */
function figureWords({ planned }: Standing): string {
  if (planned === null) return 'leave out';
  return planned === undefined ? '—' : formatMoney(planned);
}
