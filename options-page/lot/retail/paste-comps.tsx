import { useMemo, useState } from 'preact/hooks';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { Comp } from '../../../src/domain/retail/comp.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { readPastedComps } from '../../../src/intake/comps/read-pasted-comps.ts';
import { PastedRows } from '../../../src/ui/tables/pasted-rows.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';

export interface PasteCompsProps {
  readonly text: string;
  readonly today: LocalDate;
  /** How many more the lot can take. */
  readonly room: number;
  readonly onUse: (comps: Comp[]) => void;
  readonly onLeave: () => void;
}

const EXAMPLE =
  'Price\tSold or asking\tMiles\tYear\tDate\tDays\tFrom\n31,900\tsold\t58,000\t2021\t2026-09-12\t24\tOur own';

/** Rows as they were copied, what they were read as, and which can't be read; nothing is taken before it is asked. */
export function PasteComps({ text: pasted, today, room, onUse, onLeave }: PasteCompsProps) {
  const [text, setText] = useState(pasted);
  const { comps, faults, unused } = useMemo(() => readPastedComps(text, today), [text, today]);
  const usable = comps.length > 0 && comps.length <= room;
  return (
    <div class="panel stack">
      <PastedRows
        label="Comparables, as copied"
        hint="One car per row. The first row can name the columns: price, sold or asking, miles, year, date, days, from, differences. Without headings they are read in that order. Write a difference as “Tow package +450”."
        example={EXAMPLE}
        text={text}
        onText={setText}
        faults={faults}
        take={comps.length > 1 ? `Add these ${comps.length} comparables` : 'Add this comparable'}
        usable={usable}
        onTake={() => onUse(comps.map(({ comp }) => comp))}
        onLeave={onLeave}
      >
        {comps.length > 0 && <ReadComps comps={comps.map(({ comp }) => comp)} />}
        {comps.length > room && <p class="fault">There is room for {room} more. Remove some rows.</p>}
        {unused.length > 0 && <p class="quiet small">Not used: {unused.join(', ')}.</p>}
      </PastedRows>
    </div>
  );
}

function ReadComps({ comps }: { comps: readonly Comp[] }) {
  return (
    <ScrollX label="What was read">
      <table class="ledger">
        <thead>
          <tr>
            <th scope="col" class="number">
              Price
            </th>
            <th scope="col">Sold?</th>
            <th scope="col" class="number">
              Miles
            </th>
            <th scope="col">Year</th>
            <th scope="col">Date</th>
            <th scope="col" class="number">
              Days
            </th>
            <th scope="col">From</th>
            <th scope="col">Differences</th>
          </tr>
        </thead>
        <tbody>
          {comps.map((comp, i) => (
            <tr key={i}>
              <td class="number">{formatMoney(comp.price)}</td>
              <td>{comp.kind}</td>
              <td class="number">{comp.miles?.toLocaleString('en-US') ?? <Unknown />}</td>
              <td>{comp.year ?? <Unknown />}</td>
              <td>{comp.date ?? ''}</td>
              <td class="number">{comp.daysListed ?? ''}</td>
              <td>{comp.source ?? ''}</td>
              <td>
                {comp.differences
                  .map(({ label, cents }) => `${label} ${formatMoney(cents, { sign: 'always' })}`)
                  .join('; ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  );
}

const Unknown = () => <span class="missing">not set</span>;
