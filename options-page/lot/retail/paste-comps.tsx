import { useMemo, useState } from 'preact/hooks';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { Comp } from '../../../src/domain/retail/comp.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { readPastedComps } from '../../../src/intake/comps/read-pasted-comps.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
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
      <Ledger
        rows={comps}
        rowKey={(_, i) => i}
        columns={[
          { label: 'Price', number: true, cell: ({ price }) => formatMoney(price) },
          { label: 'Sold?', cell: ({ kind }) => kind },
          { label: 'Miles', number: true, cell: ({ miles }) => miles?.toLocaleString('en-US') ?? <Unknown /> },
          { label: 'Year', cell: ({ year }) => year ?? <Unknown /> },
          { label: 'Date', cell: ({ date }) => date ?? '' },
          { label: 'Days', number: true, cell: ({ daysListed }) => daysListed ?? '' },
          { label: 'From', cell: ({ source }) => source ?? '' },
          {
            label: 'Differences',
            cell: ({ differences }) =>
              differences.map(({ label, cents }) => `${label} ${formatMoney(cents, { sign: 'always' })}`).join('; '),
          },
        ]}
      />
    </ScrollX>
  );
}

const Unknown = () => <span class="missing">not set</span>;
