import { dutyWords } from '../../src/domain/rush/duty.ts';
import type { RushBand } from '../../src/domain/rush/rush-bands.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { sayClock, sayTime } from '../../src/domain/time/say-time.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { dayInWords } from '../../src/views/words/date-words.ts';

interface SheetHeadProps {
  readonly date: LocalDate;
  readonly bands: readonly RushBand[];
}

/** The head of the printed day: whose sheet it is, its time zone, and how to reach the buyer. */
export function SheetHead({ date, bands }: SheetHeadProps) {
  const { setup } = useWorkspace();
  const now = useNow(1000);
  const { name, zone, contact } = setup.store;
  const rush = bands
    .map(({ from, to, note }) => `${sayClock(from, zone)} to ${sayClock(to, zone)}${note === '' ? '' : ` (${note})`}`)
    .join(' and ');
  const duty = dutyWords(
    bands.flatMap((band) => band.duty),
    zone,
  );
  return (
    <header class="sheet-head paper-only">
      <p class="sheet-title">
        Closings, {dayInWords(date)}
        {name !== '' && <span> · {name}</span>}
      </p>
      <p>
        Reach the buyer: <span class="strong">{contact ?? '______________________________'}</span>
      </p>
      <p>
        Store time, {zone}. {rush === '' ? 'No busy hours this day.' : `Busy hours (shaded): ${rush}.`} Brackets: too
        close together for one person.
      </p>
      {duty !== '' && (
        <p>
          On duty: <span class="strong">{duty}</span>.
        </p>
      )}
      <p>Printed {sayTime(now, zone)}. Never bid over the stop price. When in doubt, call the buyer.</p>
    </header>
  );
}
