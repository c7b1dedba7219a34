import { useState } from 'preact/hooks';
import { COST_KINDS, type CostKind } from '../../../src/domain/accounts/cost-kind.ts';
import type { BankLine } from '../../../src/domain/books/bank/bank-line.ts';
import { answeredBy } from '../../../src/domain/books/folder/compare-lines.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { plainWords } from '../../../src/domain/text/plain-words.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { COST_WORDS } from '../../../src/views/books/cost-words.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { SearchBox } from '../search-box.tsx';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

const MOST_CARS = 100;

/** A line of the bank as a payment, a refund or a bill paid at once for one car; it is matched with it at once. */
export function RecordLine({ line, onDone }: { readonly line: BankLine; readonly onDone: () => void }) {
  const { folders } = useBooks();
  const book = useBook();
  const [as, setAs] = useState<'payment' | 'cost'>('payment');
  const [words, setWords] = useState('');
  const [lot, setLot] = useState<string>();
  const [payee, setPayee] = useState<string>();
  const [cost, setCost] = useState<CostKind>('other');
  const found = folders
    .filter(({ facts }) => plainWords(`${folderName(facts)} ${facts.vin ?? ''}`).includes(plainWords(words)))
    .slice(0, MOST_CARS);
  const folder = folders.find((one) => one.lot === lot);
  const amount = cents(-line.cents);
  const record = async () => {
    if (folder === undefined) return;
    const paper = {
      date: line.date,
      bank: [line.key],
      ...(payee && { payee }),
      ...(line.check !== undefined && { document: { number: line.check } }),
    };
    const label = line.text.slice(0, 120);
    const against = answeredBy({ cost, label }, folder.expected?.lines ?? []);
    const kept = await book(
      as === 'payment'
        ? { kind: 'payment-booked', ...paper, lines: [{ lot: folder.lot, cents: amount }] }
        : {
            kind: 'costs-booked',
            paid: 'bank',
            ...paper,
            lines: [{ lot: folder.lot, cost, label, cents: amount, ...(against !== undefined && { against }) }],
          },
      `${formatMoney(amount)} recorded from the bank.`,
    );
    if (kept) onDone();
  };
  return (
    <details>
      <summary>Record this line for a car</summary>
      <div class="stack">
        <RadioChoice
          legend="It is"
          value={as}
          choices={[
            { value: 'payment', label: line.cents > 0 ? 'a refund' : 'a payment of bills' },
            { value: 'cost', label: line.cents > 0 ? 'a credit on a cost' : 'a bill paid at once' },
          ]}
          onCommit={setAs}
        />
        <div class="fields">
          <SearchBox label="Search the cars" value={words} onChange={setWords} />
          <ChoiceInput
            label="Car"
            value={lot}
            none="choose one"
            choices={found.map((one) => ({ value: one.lot, label: folderName(one.facts) }))}
            onCommit={setLot}
          />
          <TextInput label="Vendor" value={payee} longest={120} onCommit={setPayee} />
          {as === 'cost' && (
            <ChoiceInput
              label="For"
              value={cost}
              choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
              onCommit={(value) => setCost(COST_KINDS.find((kind) => kind === value) ?? 'other')}
            />
          )}
        </div>
        <div class="row">
          <button type="button" disabled={folder === undefined} onClick={record}>
            Record {formatMoney(amount)}
          </button>
        </div>
        <p class="quiet small">
          One check for several bills is recorded under Payables first; it is then proposed here as a match.
        </p>
      </div>
    </details>
  );
}
