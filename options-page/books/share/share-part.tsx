import { useEffect, useState } from 'preact/hooks';
import { COST_KINDS, type CostKind } from '../../../src/domain/accounts/cost-kind.ts';
import { answeredBy } from '../../../src/domain/books/folder/compare-lines.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { splitByLargestRemainder } from '../../../src/domain/money/split-by-largest-remainder.ts';
import { plainWords } from '../../../src/domain/text/plain-words.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { ShowAll } from '../../../src/ui/tables/show-all.tsx';
import { COST_WORDS } from '../../../src/views/books/cost-words.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { markBooksAddedUp } from '../../../src/views/books/folders-shown.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { isBought, ShareHead } from '../first-folders.tsx';
import { SearchBox } from '../search-box.tsx';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** More is found by words, or shown when asked for: a table of thousands takes seconds. */
const MOST_ROWS = 40;

type By = 'equal' | 'hammer' | 'own-weights';
const WAYS: readonly { value: By; label: string }[] = [
  { value: 'equal', label: 'equally' },
  { value: 'hammer', label: 'by hammer price' },
  { value: 'own-weights', label: 'by custom weights' },
];

/** One bill for several cars, such as one truck that brought four of them, shared out to the cent. */
export function SharePart() {
  const { folders, today } = useBooks();
  const book = useBook();
  const [cost, setCost] = useState<CostKind>('transport');
  const [label, setLabel] = useState<string>();
  const [amount, setAmount] = useState<Cents>();
  const [date, setDate] = useState<LocalDate>();
  const [payee, setPayee] = useState<string>();
  const [number, setNumber] = useState<string>();
  const [owed, setOwed] = useState(false);
  const [by, setBy] = useState<By>('equal');
  const [picked, setPicked] = useState<ReadonlySet<LotId>>(new Set());
  const [weights, setWeights] = useState<ReadonlyMap<LotId, number>>(new Map());

  const [words, setWords] = useState('');
  const [all, setAll] = useState(false);
  useEffect(markBooksAddedUp, []);

  const cars = folders.filter(isBought);
  const chosen = cars.filter(({ lot }) => picked.has(lot));
  const weightOf = ({ lot, won }: PurchaseFolder) =>
    by === 'equal' ? 1 : by === 'hammer' ? (won?.hammer ?? 0) : (weights.get(lot) ?? 1);
  const parts = chosen.map(weightOf);
  const ready = amount !== undefined && amount > 0 && parts.some((weight) => weight > 0);
  const shares = ready ? splitByLargestRemainder(amount, parts) : [];
  const found = cars.filter(
    ({ facts }) =>
      words === '' || plainWords(`${folderName(facts)} ${facts.vin} ${facts.venueName}`).includes(plainWords(words)),
  );
  const listed = all ? found : found.slice(0, MOST_ROWS);
  // What is chosen counts, so it stays in sight whatever is looked for.
  const shown = [...chosen.filter((car) => !listed.includes(car)), ...listed];
  const shareOf = new Map(chosen.map(({ lot }, i) => [lot, shares[i]]));

  const keep = async () => {
    if (!ready) return;
    const words = label ?? COST_WORDS[cost];
    const lines = chosen.flatMap(({ lot, expected }) => {
      const share = shareOf.get(lot);
      const against = answeredBy({ cost, label: words }, expected?.lines ?? []);
      return share === undefined || share === 0
        ? []
        : [{ lot, cost, label: words, cents: share, ...(against !== undefined && { against }) }];
    });
    const kept = await book(
      {
        kind: 'costs-booked',
        date: date ?? today,
        paid: owed ? 'owed' : 'bank',
        ...(payee && { payee }),
        ...(number && { document: { number } }),
        lines,
        shared: { totalCents: amount, by },
      },
      `${formatMoney(amount)} split among ${countWords(lines.length, 'car', 'cars')}.`,
    );
    if (kept) {
      setAmount(undefined);
      setPicked(new Set());
    }
  };

  return (
    <>
      <header class="stack">
        <h1>One bill for several cars</h1>
        <p class="prose">
          The shares add up to the bill to the cent. Each share is rounded down, and leftover cents go to the largest
          remainders.
        </p>
      </header>
      <section class="panel stack">
        <div class="fields">
          <ChoiceInput
            label="For"
            value={cost}
            choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
            onCommit={(value) => setCost(COST_KINDS.find((kind) => kind === value) ?? 'other')}
          />
          <MoneyInput label="Amount" value={amount} onCommit={setAmount} />
          <TextInput label="Description" value={label} longest={120} onCommit={setLabel} />
          <DateInput label="Bill date" value={date ?? today} onCommit={setDate} />
          <TextInput label="Vendor" value={payee} longest={120} onCommit={setPayee} />
          <TextInput label="Bill no." value={number} longest={120} onCommit={setNumber} />
        </div>
        <CheckInput label="Not paid yet" value={owed} onCommit={setOwed} />
        <RadioChoice legend="Split it" value={by} choices={WAYS} onCommit={setBy} />
      </section>
      {cars.length > MOST_ROWS && (
        <div class="fields no-print">
          <SearchBox label="Search cars" value={words} onChange={setWords} />
        </div>
      )}
      {cars.length === 0 ? (
        <p class="quiet">No cars won yet.</p>
      ) : (
        <ScrollX label="Cars to split the bill between">
          <table class="ledger">
            <ShareHead weights={by === 'own-weights'} />
            <tbody>
              {shown.map(({ lot, facts, won }) => (
                <tr key={lot}>
                  <td>
                    <CheckInput
                      label={folderName(facts)}
                      value={picked.has(lot)}
                      onCommit={(on) =>
                        setPicked(
                          (before) => new Set(on ? [...before, lot] : [...before].filter((each) => each !== lot)),
                        )
                      }
                    />
                  </td>
                  {by === 'own-weights' && (
                    <td>
                      <NumberInput
                        label={`Weight of ${folderName(facts)}`}
                        value={weights.get(lot) ?? 1}
                        least={0}
                        most={1_000_000}
                        required
                        onCommit={(weight = 1) => setWeights((before) => new Map(before).set(lot, weight))}
                      />
                    </td>
                  )}
                  <td class="number">{won === null ? '–' : formatMoney(won.hammer)}</td>
                  <td class="number">{amountOrDash(shareOf.get(lot))}</td>
                </tr>
              ))}
              <tr class="total">
                <td>{countWords(chosen.length, 'car', 'cars')}</td>
                {by === 'own-weights' && <td />}
                <td />
                <td class="number">{amountOrDash(ready ? amount : undefined)}</td>
              </tr>
            </tbody>
          </table>
        </ScrollX>
      )}
      <ShowAll shown={listed.length} of={found.length} which="The latest" onAll={() => setAll(true)} />
      <div class="row">
        <button type="button" class="main" disabled={!ready} onClick={keep}>
          Record the shares
        </button>
      </div>
    </>
  );
}

const amountOrDash = (amount: Cents | undefined) =>
  amount === undefined ? '–' : formatMoney(amount, { cents: 'always' });
