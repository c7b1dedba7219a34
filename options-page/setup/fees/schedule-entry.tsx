import { useState } from 'preact/hooks';
import type { FeeSchedule } from '../../../src/domain/fees/fee-schedule.ts';
import { nextEdition } from '../../../src/domain/fees/next-edition.ts';
import { setupCautions } from '../../../src/domain/setup/setup-cautions.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { useNow } from '../../../src/ui/hooks/use-now.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { EntryFold } from '../entry-fold.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import { EditionChoice } from './edition-choice.tsx';
import { EditionForm } from './edition-form.tsx';
import { holdingEdition } from './edition-words.ts';
import { NewPriceList } from './new-price-list.tsx';
import { TrialPrice } from './trial-price.tsx';

export interface ScheduleEntryProps {
  readonly schedule: FeeSchedule;
  readonly path: readonly PropertyKey[];
  readonly openAtFirst: boolean;
  readonly onChange: (schedule: FeeSchedule, said: string) => void;
  readonly onRemove: () => void;
}

/** One schedule: its name, its rates by date, and the fees of a price under the chosen rates. */
export function ScheduleEntry({ schedule, path, openAtFirst, onChange, onRemove }: ScheduleEntryProps) {
  const { setup } = useSetupEdit();
  const today = dateIn(setup.store.zone, useNow(MINUTE));
  const { editions } = schedule;
  const [wanted, setWanted] = useState(() => holdingEdition(editions, today));
  const chosen = Math.min(wanted, editions.length - 1);
  const edition = editions[chosen];
  const name = schedule.name === '' ? 'New fee schedule' : schedule.name;
  const payers = setup.venues.filter((venue) => venue.feeScheduleIds.includes(schedule.id));
  const cautions = setupCautions(setup).filter((c) => c.section === 'feeSchedules' && c.index === path[1]);
  const paidAt =
    payers.length === 0 ? 'not used by a venue yet' : `paid at ${payers.map((venue) => venue.name).join(', ')}`;

  return (
    <EntryFold title={name} summary={paidAt} path={path} openAtFirst={openAtFirst} focusKey={schedule.id}>
      <div class="fields" data-focus={`${schedule.id}-name`}>
        <div class="wide">
          <TextInput
            label="Name of the schedule"
            value={schedule.name === '' ? undefined : schedule.name}
            longest={80}
            required
            placeholder="Saltgrass buy fees"
            onCommit={(next = '') => onChange({ ...schedule, name: next }, `Fee schedule renamed ${next}.`)}
          />
          <FaultsAt path={[...path, 'name']} />
        </div>
      </div>
      <FaultsAt path={path} exact />
      {cautions.length > 0 && (
        <ul class="note warning plain-list">
          {cautions.map((caution) => (
            <li key={caution.message}>{caution.message}</li>
          ))}
        </ul>
      )}
      <EditionChoice editions={editions} chosen={chosen} today={today} onChoose={setWanted} />
      {edition && (
        <EditionForm
          key={chosen}
          edition={edition}
          path={[...path, 'editions', chosen]}
          scheduleName={name}
          onChange={(next, said) => onChange({ ...schedule, editions: replaceAt(editions, chosen, next) }, said)}
        />
      )}
      {edition && <TrialPrice edition={edition} />}
      <NewPriceList
        onStart={(date) => {
          const next = nextEdition(editions, chosen, date);
          if (!next.ok) return next.message;
          setWanted(chosen + 1);
          onChange(
            { ...schedule, editions: [...next.value] },
            `${name} has new rates from ${dateInWords(date)}. Change them below.`,
          );
          return undefined;
        }}
      />
      <p class="row">
        {editions.length > 1 && (
          <button
            type="button"
            onClick={() =>
              onChange({ ...schedule, editions: removeAt(editions, chosen) }, `Deleted dated rates of ${name}.`)
            }
          >
            Delete these dated rates
          </button>
        )}
        <button type="button" onClick={onRemove}>
          Remove {name}
        </button>
      </p>
    </EntryFold>
  );
}
