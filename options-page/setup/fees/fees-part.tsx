import { useState } from 'preact/hooks';
import type { FeeSchedule } from '../../../src/domain/fees/fee-schedule.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { newSchedule } from './new-schedule.ts';
import { NoFees } from './no-fees.tsx';
import { ScheduleEntry } from './schedule-entry.tsx';
import './fees.css';

/** What buyers are charged on top of the hammer price, by schedule, rates and band. */
export function FeesPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { feeSchedules: schedules, venues } = setup;
  const [added, setAdded] = useState<string>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();

  const add = () => {
    const schedule = newSchedule();
    setAdded(schedule.id);
    focusNext(`${schedule.id}-name`);
    change({ feeSchedules: [...schedules, schedule] }, 'Added a fee schedule.');
  };
  const remove = (index: number, { id, name }: FeeSchedule) => {
    const payers = venues.filter((venue) => venue.feeScheduleIds.includes(id));
    focusNext(schedules[index + 1]?.id ?? schedules[index - 1]?.id ?? 'add');
    // One entry for both, so that one undo brings back the schedule and who pays by it.
    change(
      {
        feeSchedules: removeAt(schedules, index),
        ...(payers.length === 0
          ? {}
          : {
              venues: venues.map((venue) => ({
                ...venue,
                feeScheduleIds: venue.feeScheduleIds.filter((other) => other !== id),
              })),
            }),
      },
      `Removed the fees ${name}${payers.length === 0 ? '' : `, also from ${payers.map((venue) => venue.name).join(', ')}`}.`,
    );
  };

  return (
    <PartFrame
      part={part}
      intro="A fee schedule is what a venue charges its buyers. Enter each one once, then check it at every venue that charges it."
      caution="The venue’s own rules decide what you pay, and they change. Check new rates against an invoice."
    >
      <div class="stack" ref={root}>
        {schedules.length === 0 ? (
          <NoFees onAdd={add} />
        ) : (
          <>
            {schedules.map((schedule, index) => (
              <ScheduleEntry
                key={schedule.id}
                schedule={schedule}
                path={['feeSchedules', index]}
                openAtFirst={schedules.length === 1 || schedule.id === added}
                onChange={(next, said) => change({ feeSchedules: replaceAt(schedules, index, next) }, said)}
                onRemove={() => remove(index, schedule)}
              />
            ))}
            <p data-focus="add">
              <button type="button" onClick={add}>
                Add a fee schedule
              </button>
            </p>
          </>
        )}
      </div>
    </PartFrame>
  );
}
