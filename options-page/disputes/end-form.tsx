import { useState } from 'preact/hooks';
import { type DisputeEnding, type DisputeOutcome, undoesSale } from '../../src/domain/dispute/dispute.ts';
import { ENDING_WORDS } from '../../src/domain/dispute/ending-words.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { RadioChoice } from '../../src/ui/inputs/radio-choice.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { NewLotPick } from './new-lot-pick.tsx';
import { useLatest } from './use-latest.ts';
import { WordsInput } from './words-input.tsx';

const ENDINGS: readonly DisputeEnding[] = [
  'price-adjusted',
  'upheld',
  'not-upheld',
  'sale-undone',
  'sold-again',
  'dropped',
];
/** What the words of an ending are for where the car comes again. */
export const LEARNED = 'What to remember if this car is offered again';
const WAYS = [
  { value: 'to-us', label: 'Paid to us' },
  { value: 'from-us', label: 'Paid by us' },
] as const;

/** Ends a dispute, with its money. Taking it back opens it again. */
export function EndForm({ shown: { lot, dispute } }: { shown: ShownDispute }) {
  const { setup } = useWorkspace();
  const { note } = useAfterVerbs();
  const [ended, setEnded] = useState<DisputeEnding>();
  const [amount, setAmount] = useState<Cents>();
  const [way, setWay] = useState<'to-us' | 'from-us'>('to-us');
  const [at, setAt] = useState<Instant>();
  const [words, setWords] = useState('');
  const [newLot, setNewLot] = useState<LotId>();
  const [fault, setFault] = useState<string>();
  const latest = useLatest({ ended, amount, way, at, words, newLot });
  const end = async () => {
    const { ended, amount, way, at, words, newLot } = await latest();
    if (ended === undefined) return setFault('Choose the outcome.');
    if (ended === 'price-adjusted' && amount === undefined) return setFault('Enter the price adjustment.');
    setFault(undefined);
    const outcome: DisputeOutcome = {
      ended,
      at: at ?? instant(Date.now()),
      ...(amount !== undefined && { cents: cents(way === 'to-us' ? amount : -amount) }),
      ...(words.trim() !== '' && { words: words.trim() }),
      ...(ended === 'sold-again' && newLot !== undefined && { newLot }),
    };
    await note(lot, { kind: 'dispute-closed', dispute: dispute.entry, outcome });
    return undefined;
  };
  return (
    <section class="panel stack">
      <h2>Close the dispute</h2>
      <div class="fields">
        <ChoiceInput
          label="Outcome"
          value={ended}
          none="Choose"
          choices={ENDINGS.map((value) => ({ value, label: ENDING_WORDS[value] }))}
          onCommit={(chosen) => setEnded(ENDINGS.find((each) => each === chosen))}
        />
        <MoneyInput
          label={ended !== undefined && undoesSale(ended) ? 'Other money' : 'Amount'}
          value={amount}
          onCommit={setAmount}
          hint={ended !== undefined && undoesSale(ended) ? 'The price of the car is refunded separately' : undefined}
        />
        <MomentInput label="When" value={at} zone={setup.store.zone} onChange={setAt} hint="Leave blank for now" />
      </div>
      {amount !== undefined && <RadioChoice legend="Direction" value={way} choices={WAYS} onCommit={setWay} />}
      {ended !== undefined && undoesSale(ended) && (
        <p class="small">
          The sale is canceled. Its cash and lot space are free again, and what you paid is listed under refunds due.
        </p>
      )}
      {ended === 'sold-again' && (
        <div class="fields">
          <NewLotPick lot={lot} value={newLot} onChange={setNewLot} />
        </div>
      )}
      <WordsInput
        label={ended === 'sold-again' ? LEARNED : 'Notes'}
        value={words}
        longest={4000}
        onChange={setWords}
        rows={2}
      />
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <p>
        <button type="button" onClick={end}>
          Close the dispute
        </button>
      </p>
    </section>
  );
}
