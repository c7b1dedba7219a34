import type { Cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { type Ppm, ppm } from '../../src/domain/money/rate.ts';
import { MOST_PLACES, type PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { DateInput } from '../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { NumberInput } from '../../src/ui/inputs/number-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { DatedMoney } from './dated-money.tsx';
import { lineWords } from './line-words.ts';
import { useSetPurse } from './use-purse.ts';

/** A quarter is more than anybody leaves to luck. */
const MOST_CHANCE = 25;

/** What there is to buy with, each figure kept as soon as it is typed. */
export function PurseForm({ purse }: { purse: PurseEntry | undefined }) {
  const { setup, say } = useWorkspace();
  const keep = useSetPurse();
  const change = (set: Partial<PurseEntry>, said: string) => {
    if (purse === undefined) return say('Enter the cash for cars first.');
    const next = { ...purse, ...set };
    void keep(withoutGaps(next), said);
  };
  const count = (cash: Cents) => {
    const counted = { cashCents: cash, countedAt: instant(Date.now()) };
    void keep(
      purse === undefined ? { ...counted, until: 'weekend' } : { ...purse, ...counted },
      `Cash for cars: ${formatMoney(cash)}.`,
    );
  };
  return (
    <div class="stack">
      <div class="fields">
        <MoneyInput
          label="Cash for cars"
          value={purse?.cashCents}
          required={purse !== undefined}
          hint="In the bank now, with nothing taken off: what you owe for won cars comes off by itself"
          onCommit={(cash) => cash !== undefined && count(cash)}
        />
        <MoneyInput
          label="Left on the floor line"
          value={purse?.lineCents}
          hint={lineWords(setup)}
          onCommit={(line) =>
            change(
              { lineCents: line },
              line === undefined ? 'No floor line.' : `Floor line: ${formatMoney(line)} left.`,
            )
          }
        />
        <NumberInput
          label="Places left on the lot"
          value={purse?.places}
          least={0}
          most={MOST_PLACES}
          hint="Leave blank when there is always room"
          onCommit={(places) =>
            change({ places }, places === undefined ? 'Places don’t run out.' : `Places left: ${places}.`)
          }
        />
        <DateInput
          label="Until"
          value={purse === undefined || purse.until === 'weekend' ? undefined : purse.until}
          hint="Leave blank for this weekend. Choose the next payday if the money must last until then"
          onCommit={(until) =>
            change(
              { until: until ?? 'weekend' },
              until === undefined ? 'The purse is for this weekend.' : untilWords(until),
            )
          }
        />
        <RateInput
          label="Allowed chance of overspending"
          value={purse === undefined ? undefined : ppm(purse.overspendPpm ?? 0)}
          most={MOST_CHANCE}
          hint="0% bids only what the cash covers if every bid wins. A few percent bids on more lots at once, and once in a while more is won than the cash pays for"
          onCommit={(chance: Ppm = ppm(0)) =>
            change({ overspendPpm: chance }, `Allowed chance of overspending: ${chance / 10_000}%.`)
          }
        />
      </div>
      {purse !== undefined && <DatedMoney purse={purse} onChange={(moves, said) => change({ moves }, said)} />}
    </div>
  );
}

const untilWords = (until: LocalDate) => `The purse is for lots that close until ${sayDate(until)}.`;

/** What was emptied is not kept as nothing. */
function withoutGaps(purse: { readonly [Key in keyof PurseEntry]: PurseEntry[Key] | undefined }): PurseEntry {
  return Object.fromEntries(Object.entries(purse).filter(([, value]) => value !== undefined)) as unknown as PurseEntry;
}
