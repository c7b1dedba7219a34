import { useEffect, useState } from 'preact/hooks';
import { nextClose, readingsOf } from '../../src/domain/alerts/alert-lot.ts';
import type { BidState } from '../../src/domain/bid/bid-state.ts';
import { bidWords, priceWords } from '../../src/domain/bid/bid-words.ts';
import { tellApart } from '../../src/domain/close/say-close.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { AskBox } from '../../src/ui/ask/ask-box.tsx';
import { Unkept } from '../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../src/ui/ask/use-asked-act.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { RUSH_WORDS, rushOf } from '../../src/views/lots/rush-words.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import { stateQuestions } from '../../src/views/lots/state-questions.ts';
import { noStopWords, plannedApart } from '../../src/views/lots/stop-words.ts';
import { timeWords } from '../../src/views/words/call-words.ts';
import { timeLeft } from '../../src/views/words/close-words.ts';
import { LotActs } from './lot-acts.tsx';
import type { NowLot } from './now-lot.ts';
import { QuickActs } from './quick-acts.tsx';

interface NowCardProps {
  readonly lot: NowLot;
  readonly people: readonly string[];
  /** Who uses this computer, where several are in a team. */
  readonly me?: string | undefined;
  readonly now: Instant;
  /** Whether everything that can be done about it is in sight at once. */
  readonly open: boolean;
  /** How many close almost together with it, itself among them. */
  readonly together?: number;
}

/**
 * One lot: its name, the price at which to stop, the time left, and a button for what is most likely said of it. Opened, it
 * has everything that can be done.
 */
export function NowCard({ lot, people, me, now, open, together = 1 }: NowCardProps) {
  const { setup } = useWorkspace();
  const { send, pending, clear } = useAskedAct(lot.state);
  const bid = lot.bidAt(now);
  const next = nextClose(lot, now);
  const doubtful = readingsOf(lot).length > 1;
  const [isOpen, setOpen] = useState(open);
  useEffect(() => setOpen(open), [open]);
  const questions = stateQuestions(bid, {
    result: lot.state.sale?.result?.entry,
    people,
    zone: setup.store.zone,
  });
  return (
    <li class="now-card" id={`now-${lot.id}`} tabIndex={-1}>
      <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span class="now-name">{nameWords(lot)}</span>
          <span class="now-stop">
            <span class="small quiet">{stopLabel(lot.standing)}</span>
            <span class={lot.standing.maxBid === null ? 'now-figure words' : 'now-figure'}>
              {stopFigure(lot.standing)}
            </span>
            {plannedApart(lot.standing) !== undefined && (
              <span class="small quiet">max {formatMoney(lot.standing.maxBid ?? ZERO)}</span>
            )}
          </span>
          <span class="now-left">
            <span class={next > now && next - now < HOUR ? 'act' : ''}>
              {timeLeft(next, now)}
              {doubtful && '?'}
            </span>
            {together > 1 && <span class="small now-together">{together} close together</span>}
          </span>
          <span class={bid.loud ? 'now-facts act small' : 'now-facts small'}>
            {standWords(lot, bid, seenWords(bid, setup.store.zone, now), me)}
          </span>
        </summary>
        <p class="small quiet">
          <CloseLine lot={lot} /> <a href={`#/lot/${lot.id}`}>Worksheet</a>
        </p>
        {pending?.question === undefined &&
          questions.map((question) => (
            <AskBox
              key={question.words}
              question={question}
              onAct={send}
              onLeave={(then) => then === 'go' && location.assign(`#/lot/${lot.id}`)}
              focus={false}
            />
          ))}
        {isOpen && <LotActs lot={lot} people={people} me={me} now={now} onAct={send} />}
      </details>
      <Unkept pending={pending} onAct={send} onLeave={clear} />
      {!isOpen && pending === undefined && <QuickActs lot={lot} me={me} now={now} onAct={send} />}
    </li>
  );
}

/** The number first: it is what the sale calls out, and the end of a long name is cut off. */
function nameWords({ state: { facts } }: NowLot): string {
  const title = lotTitle(facts);
  const { lotNumber } = facts;
  return lotNumber === undefined || title === `Lot ${lotNumber}` ? title : `Lot ${lotNumber} · ${title}`;
}

function CloseLine({ lot }: { lot: NowLot }) {
  const { setup } = useWorkspace();
  const { facts, clock } = lot.state;
  const { extended } = clock ?? {};
  return (
    <>
      {[
        closeWords(lot, setup.store.zone),
        RUSH_WORDS[rushOf(setup).of(lot.close).kind],
        extended?.to === lot.close ? `extended ${extended.minutes} min` : '',
        facts.venueName ?? facts.venueId,
        facts.lotNumber && `lot ${facts.lotNumber}`,
      ]
        .filter(Boolean)
        .join(' · ')}
    </>
  );
}

/** While nobody knows which of several moments is meant, all of them. */
function closeWords(lot: NowLot, zone: Zone): string {
  const readings = readingsOf(lot);
  if (readings.length === 1) return sayTime(lot.close, zone);
  return `in doubt: ${tellApart(readings, zone).join(' or ')}`;
}

/** Which number it is. */
function stopLabel(standing: Standing): string {
  if (standing.maxBid === null) return '';
  return plannedApart(standing) === undefined ? 'stop at' : 'planned';
}

function stopFigure(standing: Standing): string {
  const none = noStopWords(standing);
  if (none !== undefined) return none === 'not yet' ? 'no max bid yet' : none;
  const planned = plannedApart(standing);
  return planned === null ? 'left out' : formatMoney(planned ?? standing.maxBid ?? ZERO);
}

/** When the price was last looked at: an hour on, nobody knows whether our bid still leads. */
function seenWords({ price }: BidState, zone: Zone, now: Instant): string {
  const seen = price?.fell?.seenAt ?? price?.seenAt;
  return seen === undefined || now - seen < HOUR ? '' : `, seen ${timeWords(seen, zone, now)}`;
}

/** Whether the words of a bid have the price in them. */
const saysPrice = (bid: BidState) => bid.is === 'outbid' || (bid.is === 'ended' && bid.result === undefined);

/** What stands at the sale, as far as we know. */
function standWords(lot: NowLot, bid: BidState, seen: string, me: string | undefined): string {
  const { priceNow } = lot.state.facts;
  const { why } = lot.standing;
  return [
    why === undefined ? '' : `can’t be worked out: ${why}`,
    bidWords(bid),
    priceWords(bid),
    priceNow === undefined ? '' : saysPrice(bid) ? seen.replace(', ', '') : `now ${formatMoney(priceNow)}${seen}`,
    holderWords(lot, me),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** In a team it counts who said so himself: what was only handed over may not have been seen. */
function holderWords({ mine, handedTo, taken }: NowLot, me: string | undefined): string {
  if (mine === true) return 'you have it';
  if (handedTo === undefined) return '';
  return me === undefined || taken === true ? `${handedTo} has it` : `handed over to ${handedTo}, who has not answered`;
}
