import type { LotAct } from '../../src/acts/lot-acts.ts';
import { leadsOf } from '../../src/domain/alerts/lot-calls.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { type AmountAct, AmountActs } from './amount-acts.tsx';
import { HandOver } from './hand-over.tsx';
import type { NowLot } from './now-lot.ts';
import { putOffChoices } from './put-off-choices.ts';

interface LotActsProps {
  readonly lot: NowLot;
  readonly people: readonly string[];
  readonly now: Instant;
  readonly onAct: (act: LotAct) => void;
}

const ADDED = [1, 2, 5, 10] as const;

const RESULTS: readonly AmountAct[] = [
  {
    words: (amount) => (amount === null ? 'Won at …' : `Won at ${amount}`),
    act: (amount) => (amount === null ? null : { do: 'ended', result: { ended: 'won', hammerCents: amount } }),
  },
  {
    words: (amount) => (amount === null ? 'Lost' : `Lost at ${amount}`),
    act: (amount) => ({ do: 'ended', result: { ended: 'lost', ...(amount !== null && { hammerCents: amount }) } }),
  },
  {
    words: () => 'Not sold',
    act: (amount) => ({ do: 'ended', result: { ended: 'not-sold', ...(amount !== null && { highCents: amount }) } }),
  },
];

/** Everything that can be done about one lot now, each with one press. */
export function LotActs({ lot, people, now, onAct }: LotActsProps) {
  const { setup } = useWorkspace();
  const { facts } = lot.state;
  const open = lot.close > now;
  const puttable = putOffChoices(lot, leadsOf(lot, setup.alerts), now);
  return (
    <div class="now-do">
      {open && (
        <AmountActs
          label={lot.bid.placed ? 'Another proxy' : 'Your proxy'}
          start={lot.standing.maxBid ?? undefined}
          acts={[
            {
              words: (amount) => (amount === null ? 'I placed …' : `I placed ${amount}`),
              act: (cents) => (cents === null ? null : { do: 'placed', cents }),
              main: !lot.bid.placed,
            },
          ]}
          onAct={onAct}
        />
      )}
      <AmountActs label="Hammer price" start={facts.priceNow} acts={RESULTS} onAct={onAct} />
      <fieldset class="now-row">
        <legend>Extended</legend>
        <div class="now-acts four">
          {ADDED.map((minutes) => (
            <button key={minutes} type="button" onClick={() => onAct({ do: 'extended', minutes, from: lot.close })}>
              <span class="visually-hidden">Extended by </span>
              {minutes} min
            </button>
          ))}
        </div>
      </fieldset>
      {open && (
        <fieldset class="now-row">
          <legend>Remind me again</legend>
          <div class="now-acts">
            {puttable.map(({ minutes, words }) => (
              <button key={minutes} type="button" onClick={() => onAct({ do: 'put-off', minutes })}>
                {words}
              </button>
            ))}
            <button type="button" onClick={() => onAct({ do: 'done' })}>
              No more reminders
            </button>
          </div>
        </fieldset>
      )}
      {open && <HandOver handedTo={lot.handedTo} people={people} onAct={onAct} />}
    </div>
  );
}
