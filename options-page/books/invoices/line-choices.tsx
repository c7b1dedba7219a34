import type { ExpectedLine } from '../../../src/domain/books/folder/expected.ts';
import type { JudgedLine } from '../../../src/domain/books/invoice/judge-line.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { plainWords } from '../../../src/domain/text/plain-words.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';

interface LineChoicesProps {
  readonly judged: JudgedLine;
  /** Which car, for those who hear the page. */
  readonly theirs: string;
  /** What was expected of the car. */
  readonly expected: readonly ExpectedLine[];
  readonly onTurn: (line: string, what: 'cost' | 'payment') => void;
  readonly onDay: (line: string, day: LocalDate | undefined) => void;
  readonly onLink: (words: string, name: string) => void;
}

const TURNS = { cost: 'Change to a cost', payment: 'Change to a payment' } as const;

/** What only a person can say of a line: a cost or a payment, its day, and what it stands for in other words. */
export function LineChoices({ judged, theirs, expected, onTurn, onDay, onLink }: LineChoicesProps) {
  const { line, verdict } = judged;
  const isCharge = line.what === 'cost' && line.cents > 0;
  const canBeLinked = isCharge && (verdict === 'not-expected' || line.against !== undefined);
  const about = `${line.label}, ${formatMoney(line.cents)}, ${theirs}`;
  const isOdd = line.what === 'payment' || verdict === 'not-expected';
  const others = (['payment', 'cost'] as const).filter((what) => what !== line.what);
  return (
    <>
      {(line.what === 'unsure' || isOdd) && (
        <span class="row">
          {others.map((what) => (
            <button
              key={what}
              type="button"
              class="plain small"
              aria-label={`${TURNS[what]}: ${about}`}
              onClick={() => onTurn(line.id, what)}
            >
              {TURNS[what]}
            </button>
          ))}
        </span>
      )}
      {canBeLinked && expected.length > 0 && (
        <select
          aria-label={`Same as which expected line: ${about}`}
          value={line.against ?? ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            const named = expected.find(({ key }) => key === value);
            onLink(plainWords(line.label), plainWords(named?.label ?? ''));
          }}
        >
          <option value="">not expected</option>
          {expected.map(({ key, label }) => (
            <option key={key} value={key}>
              same as {label}
            </option>
          ))}
        </select>
      )}
      {line.dayDoubt !== undefined && verdict === 'which-day' && (
        <DateInput label={`Date of ${line.label}`} value={line.date} onCommit={(day) => onDay(line.id, day)} />
      )}
    </>
  );
}
