import type { JudgedLine } from '../../../src/domain/books/invoice/judge-line.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';

interface LineChoicesProps {
  readonly judged: JudgedLine;
  /** Which car, for those who hear the page. */
  readonly theirs: string;
  readonly onTurn: (line: string, what: 'cost' | 'payment') => void;
  readonly onDay: (line: string, day: LocalDate | undefined) => void;
}

const TURNS = { cost: 'Change to a cost', payment: 'Change to a payment' } as const;

/** What only a person can say of a line: whether it is a cost or a payment, and its day where that is in doubt. */
export function LineChoices({ judged: { line, verdict }, theirs, onTurn, onDay }: LineChoicesProps) {
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
      {line.dayDoubt !== undefined && verdict === 'which-day' && (
        <DateInput label={`Date of ${line.label}`} value={line.date} onCommit={(day) => onDay(line.id, day)} />
      )}
    </>
  );
}
