import { useState } from 'preact/hooks';
import { type Cents, cents, sumCents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import { sayDate, sayTime } from '../../src/domain/time/say-time.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { PurseView } from '../../src/views/plan/purse-of.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import type { TermId } from '../../src/views/words/glossary.ts';
import { PurseForm } from './purse-form.tsx';

interface PurseHeadProps {
  readonly entry: PurseEntry;
  /** With what is promised, as the plan was last made from it. */
  readonly view: PurseView | undefined;
}

/** What there is to bid with, and the way to change it. */
export function PurseHead({ entry, view }: PurseHeadProps) {
  const { setup } = useWorkspace();
  const [open, setOpen] = useState(false);
  const counted = `${formatMoney(entry.cashCents)} counted ${sayTime(entry.countedAt, setup.store.zone)}`;
  return (
    <section class="panel stack" aria-label="Purse">
      <div class="plan-figures">
        <Fact term="cash-to-bid" label="Cash to bid with" figure={view && formatMoney(view.purse.cash)}>
          {counted}
          {view !== undefined && promisedWords(view)}
        </Fact>
        {entry.lineCents !== undefined && (
          <Fact
            term="line-left"
            label="Left on the line"
            figure={view && formatMoney(view.purse.line?.free ?? cents(0))}
          >
            {view !== undefined && view.promised.line > 0
              ? `less ${formatMoney(view.promised.line)} for won cars`
              : 'for titles that the lender takes'}
          </Fact>
        )}
        <Fact
          term="places-on-lot"
          label="Places on the lot"
          figure={entry.places === undefined ? 'enough' : String(view?.purse.places ?? entry.places)}
        >
          {view !== undefined && view.placesTaken > 0
            ? `less ${countWords(view.placesTaken, 'car', 'cars')} won since`
            : entry.places === undefined
              ? 'never runs out'
              : 'free'}
        </Fact>
        <Fact term="purse-until" label="For lots that close until" figure={view && sayDate(view.lastDay)}>
          {entry.until === 'weekend' ? 'this weekend' : 'the day you set'}
          {(entry.moves ?? []).length > 0 && `; ${formatMoney(sum(entry))} comes in and goes out before`}
        </Fact>
      </div>
      {view?.faults.map((sentence) => (
        <p key={sentence} class="note warning">
          {sentence}
        </p>
      ))}
      <div class="row no-print">
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? 'Close the purse' : 'Change the purse'}
        </button>
      </div>
      {open && <PurseForm purse={entry} />}
    </section>
  );
}

const sum = ({ moves = [] }: PurseEntry): Cents => sumCents(moves.map((move) => move.cents));

function promisedWords({ promised }: PurseView): string {
  if (promised.cash === 0) return '';
  return `, less ${formatMoney(promised.cash)} owed for ${countWords(promised.cars, 'won car', 'won cars')}`;
}

interface FactProps {
  readonly term: TermId;
  readonly label: string;
  /** Absent until it is worked out. */
  readonly figure: string | undefined;
  readonly children?: preact.ComponentChildren;
}

/** One figure with what it is and what stands behind it. */
export function Fact({ term, label, figure, children }: FactProps) {
  return (
    <div class="plan-fact">
      <div class="small quiet">
        <TermLink term={term}>{label}</TermLink>
      </div>
      <div class="figure">{figure ?? '…'}</div>
      <div class="small quiet">{children}</div>
    </div>
  );
}
