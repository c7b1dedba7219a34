import { useMemo, useState } from 'preact/hooks';
import type { StockRecord } from '../../../src/domain/carrying/stock-record.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { readPastedStock } from '../../../src/intake/stock/read-pasted-stock.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { PastedRows } from '../../../src/ui/tables/pasted-rows.tsx';

export interface PasteStockProps {
  readonly today: LocalDate;
  readonly onUse: (record: StockRecord) => void;
  readonly onLeave: () => void;
}

const EXAMPLE = 'Came\tSold\n2026-08-03\t2026-09-11\n2026-08-20\t\n2026-09-02\t2026-10-25';
const MOST = 2000;

/** His cars as they were copied, and what they were read as; nothing is taken before it is asked. */
export function PasteStock({ today, onUse, onLeave }: PasteStockProps) {
  const [text, setText] = useState('');
  const [since, setSince] = useState<LocalDate>();
  const { cars, faults } = useMemo(() => readPastedStock(text, today, since), [text, today, since]);
  const sold = cars.filter((car) => car.sold).length;
  const usable = cars.length > 0 && cars.length <= MOST;
  return (
    <div class="stack paste">
      <PastedRows
        label="Your cars, as copied"
        hint="One car per row: the day it came in and the day it sold, blank if unsold. Or its days, and yes or no. The first line can name the columns: came, sold, car."
        example={EXAMPLE}
        text={text}
        onText={setText}
        between={
          <div class="fields">
            <DateInput
              label="The list has every car sold since"
              value={since}
              hint="Blank if it has every car ever bought"
              onCommit={setSince}
            />
          </div>
        }
        faults={faults}
        take={cars.length > 1 ? `Use these ${cars.length} cars` : 'Use this car'}
        usable={usable}
        onTake={() => onUse({ asOf: today, cars: [...cars] })}
        onLeave={onLeave}
      >
        {cars.length > 0 && (
          <p>
            {cars.length} cars were read: {sold} sold, {cars.length - sold} not yet.
          </p>
        )}
        {cars.length > MOST && <p class="fault">At most {MOST} cars. Remove the oldest.</p>}
      </PastedRows>
    </div>
  );
}
