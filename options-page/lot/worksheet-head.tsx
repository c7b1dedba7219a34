import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Outcome } from '../../src/domain/outcome.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { DealRefusal } from '../../src/domain/worksheet/deal-of.ts';
import type { Worksheet } from '../../src/domain/worksheet/worksheet-of.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { SaveCalendar } from '../../src/ui/calendar/save-calendar.tsx';
import { CloseText } from '../../src/ui/close-text.tsx';
import { TermLink } from '../../src/ui/term-link.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { TermId } from '../../src/views/words/glossary.ts';

export interface WorksheetHeadProps {
  readonly lot: LotState;
  readonly sheet: Outcome<Worksheet, DealRefusal>;
  readonly now: Instant;
}

/** Which car it is, the room left and the time left. The number to stop at stands below, and stays in sight. */
export function WorksheetHead({ lot, sheet, now }: WorksheetHeadProps) {
  const { dropLot, say } = useWorkspace();
  const { facts } = lot;
  const drop = async () => {
    const kept = await dropLot(lot.id);
    if (!kept.ok) return say(kept.message);
    say(`${lotTitle(facts)} removed from your list.`, kept.value.entry);
    location.assign('#/lots');
  };
  return (
    <header class="worksheet-head">
      <div class="stack">
        <div>
          <h1>{lotTitle(facts)}</h1>
          <p class="quiet">
            {[
              facts.miles === undefined ? undefined : `${facts.miles.toLocaleString('en-US')} mi`,
              facts.vin,
              facts.venueName ?? facts.venueId,
              facts.lotNumber && `lot ${facts.lotNumber}`,
            ]
              .filter(Boolean)
              .join(' · ')}
          </p>
        </div>
        <div class="row no-print">
          <button type="button" onClick={() => print()}>
            Print
          </button>
          {facts.close !== undefined && (
            <SaveCalendar
              label="Add to calendar"
              choice={{ lot: lot.id }}
              name={`closing ${lotTitle(facts)}`.replace(/[^\p{L}\p{N}]+/gu, '-').slice(0, 60)}
            />
          )}
          {(lot.sale?.result || lot.after) && (
            <a class="button" href={`#/won/${lot.id}`}>
              After the sale
            </a>
          )}
          <button type="button" onClick={drop}>
            Stop watching
          </button>
        </div>
      </div>
      <div class="worksheet-facts">
        <HeadFact term="headroom" label="Headroom" value={headroomWords(sheet)} />
        <HeadFact
          term="price-now"
          label="Price now"
          value={facts.priceNow === undefined ? 'not known' : formatMoney(facts.priceNow)}
        />
        <div>
          <div class="small quiet">
            <TermLink term="close">Closes</TermLink>
          </div>
          <CloseText close={facts.close} now={now} />
        </div>
      </div>
    </header>
  );
}

function HeadFact({ term, label, value }: { term: TermId; label: string; value: string }) {
  return (
    <div>
      <div class="small quiet">
        <TermLink term={term}>{label}</TermLink>
      </div>
      <div class="figure">{value}</div>
    </div>
  );
}

function headroomWords(sheet: WorksheetHeadProps['sheet']): string {
  if (!sheet.ok || sheet.value.headroom === null) return '—';
  const { headroom } = sheet.value;
  return headroom < 0 ? `${formatMoney(cents(-headroom))} over max` : formatMoney(headroom);
}
