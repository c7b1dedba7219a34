import { useState } from 'preact/hooks';
import { disputeDues } from '../../src/domain/after-sale/dispute-due.ts';
import { venuePlaces } from '../../src/domain/after-sale/venue-place.ts';
import { eventsOf } from '../../src/domain/after-sale/win.ts';
import type { Dispute } from '../../src/domain/dispute/dispute.ts';
import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import { STARTING_NEEDS } from '../../src/domain/dispute/starting-needs.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import { DISPUTE_REASONS } from '../../src/domain/setup/after-sale-rules.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { DueText, WhyDue } from '../../src/ui/after-sale/due-text.tsx';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { useBookedLots } from '../../src/ui/hooks/use-booked-lots.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { RadioChoice } from '../../src/ui/inputs/radio-choice.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { soldLotOf } from '../../src/views/sold/sold-lot.ts';
import { SameCase } from './same-case.tsx';
import { useLatest } from './use-latest.ts';
import { WordsInput } from './words-input.tsx';

const SIDES = [
  { value: 'ours', label: 'Our claim' },
  { value: 'theirs', label: 'Claim against us' },
] as const;

/** Everything that a dispute begins with, and until when it is to be brought up or answered, before it is opened. */
export function OpenDisputeForm({ lot }: { lot: LotState }) {
  const { setup } = useWorkspace();
  const { note } = useAfterVerbs();
  const won = lot.sale?.result?.result.ended === 'won';
  const [side, setSide] = useState<Dispute['side']>('ours');
  const [reason, setReason] = useState<Dispute['reason']>(won ? 'hidden-defect' : 'bid-not-taken');
  const [words, setWords] = useState('');
  const [asked, setAsked] = useState<Cents>();
  const [at, setAt] = useState<Instant | undefined>(() => instant(Math.floor(Date.now() / MINUTE) * MINUTE));
  const [dueAt, setDueAt] = useState<Instant>();
  const [fault, setFault] = useState<string>();
  const place = venuePlaces(setup)(lot.facts);
  const draft: Dispute = {
    side,
    reason,
    words: words.trim(),
    ...(asked !== undefined && { askedCents: asked }),
    at: at ?? instant(Date.now()),
    ...(dueAt !== undefined && { dueAt }),
    needs: [...STARTING_NEEDS[reason]],
  };
  const sold = soldLotOf(lot, useBookedLots()?.(lot.id, lot.facts));
  const [first] = disputeDues({ ...draft, steps: [] }, eventsOf(sold), place);
  const latest = useLatest({ draft, at });
  const open = async () => {
    const { draft: opened, at: when } = await latest();
    if (opened.words === '') return setFault('Enter what happened.');
    if (when === undefined) return setFault('Enter the date and time it came up.');
    setFault(undefined);
    const entry = await note(lot, { kind: 'dispute-opened', opened }, 'Dispute opened.');
    if (entry !== null) location.assign(`#/dispute/${entry}`);
  };
  return (
    <section class="stack loose dispute-form">
      <header>
        <h1>Open a dispute</h1>
        <p class="quiet">
          {lotTitle(lot.facts)} · {place.name}
        </p>
      </header>
      <RadioChoice legend="Whose claim" value={side} choices={SIDES} onCommit={setSide} />
      <div class="fields">
        <ChoiceInput
          label="What it is about"
          value={reason}
          choices={DISPUTE_REASONS.map((value) => ({ value, label: REASON_WORDS[value] }))}
          onCommit={(chosen) => setReason(DISPUTE_REASONS.find((each) => each === chosen) ?? reason)}
        />
        <MoneyInput
          label="Amount claimed"
          value={asked}
          onCommit={setAsked}
          hint="Leave blank if there is no amount yet"
        />
        <MomentInput
          label={side === 'ours' ? 'When you found it' : 'When you got their notice'}
          value={at}
          zone={setup.store.zone}
          onChange={setAt}
        />
        <MomentInput
          label="Deadline they named"
          value={dueAt}
          zone={setup.store.zone}
          onChange={setDueAt}
          hint="Overrides the venue’s rule"
        />
      </div>
      <SameCase lot={lot} dispute={{ side, reason }} now={instant(Date.now())} />
      <WordsInput label="What happened" value={words} longest={4000} onChange={setWords} />
      {first && (
        <div class="note stack">
          <p class="row">
            <span class="strong">{first.what}:</span>{' '}
            <DueText due={first.due} now={instant(Date.now())} place={place} />
          </p>
          <p class="small">
            {first.due.as === 'no-rule' ? (
              <>
                Setup has no deadline for {place.name}. <a href="#/setup/after">Copy it from the venue’s terms</a>, or
                enter the deadline above.
              </>
            ) : (
              <WhyDue due={first.due} />
            )}{' '}
            The venue’s own terms decide.
          </p>
        </div>
      )}
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <div class="row">
        <button type="button" class="main" onClick={open}>
          Open the dispute
        </button>
        <a class="button" href={`#/won/${lot.id}`}>
          Cancel
        </a>
      </div>
    </section>
  );
}
