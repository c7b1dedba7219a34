import { useRef } from 'preact/hooks';
import { type DraftEdit, isAsked, withPicked, withTyped } from '../../capture/draft/draft-edit.ts';
import type { DraftFieldName } from '../../capture/draft/draft-lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { instant } from '../../domain/time/instant.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import { DraftRow } from './draft-row.tsx';
import { DRAFT_FIELDS, WANTED } from './draft-words.ts';

interface DraftRowsProps {
  readonly edit: DraftEdit;
  readonly setup: Setup;
  readonly venueId: string | undefined;
  readonly onEdit: (edit: DraftEdit) => void;
  readonly onPoint: (name: DraftFieldName, what: string) => void;
}

/** Every field that was read, and those that a max bid waits for. The rest can still be pointed at or typed. */
export function DraftRows({ edit, setup, venueId, onEdit, onPoint }: DraftRowsProps) {
  const { fields } = edit.draft;
  const year = fields.year?.settled === true ? fields.year.readings[0]?.value : undefined;
  const storeZone = setup.store.zone;
  const thisYear = Number(wallClock(instant(Date.now()), storeZone).date.slice(0, 4));
  const row = ({ name, label, what }: (typeof DRAFT_FIELDS)[number]) => (
    <DraftRow
      key={name}
      name={name}
      label={label}
      field={fields[name]}
      typed={edit.typed.has(name)}
      asked={isAsked(edit, name)}
      storeZone={storeZone}
      venueZone={setup.venues.find(({ id }) => id === venueId)?.zone}
      year={year}
      thisYear={thisYear}
      onType={(value) => onEdit(withTyped(edit, name, value))}
      onPick={(at) => onEdit(withPicked(edit, name, at))}
      onPoint={() => onPoint(name, what)}
    />
  );
  // What was asked stays where it is once it is answered, so that nothing moves under the finger.
  const everAsked = useRef<ReadonlySet<DraftFieldName>>(new Set());
  everAsked.current = new Set(
    DRAFT_FIELDS.flatMap(({ name }) => (everAsked.current.has(name) || isAsked(edit, name) ? [name] : [])),
  );
  const questions = DRAFT_FIELDS.filter(({ name }) => everAsked.current.has(name));
  const shown = DRAFT_FIELDS.filter((one) => fields[one.name] !== undefined || WANTED.has(one.name));
  const others = DRAFT_FIELDS.filter((one) => !shown.includes(one) && !questions.includes(one));
  return (
    <div>
      {questions.length > 0 && (
        <section class="draft-asked" aria-label="Questions about this page">
          <h2>The page leaves this open</h2>
          {questions.map(row)}
        </section>
      )}
      {shown.filter((one) => !questions.includes(one)).map(row)}
      <details class="draft-more">
        <summary class="small">What was not read ({others.length})</summary>
        {others.map(row)}
      </details>
    </div>
  );
}
