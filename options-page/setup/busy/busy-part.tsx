import type { Rush } from '../../../src/domain/setup/store.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { ExceptionFields } from './exception-fields.tsx';
import { WeekFields } from './week-fields.tsx';
import { WeekPicture } from './week-picture.tsx';
import './busy.css';

/** The hours in which nobody can watch a close. */
export function BusyPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { rush } = setup;
  const commit = (set: Partial<Rush>, said: string) => change({ rush: { ...rush, ...set } }, said);
  return (
    <PartFrame
      part={part}
      intro="The hours when everyone is with customers, in store time. For closings in or near them you get a list the evening before and a reminder before they begin. Name who is on duty, and the reminders of those hours carry that name; split the hours where somebody else takes over."
    >
      <WeekPicture weekly={rush.weekly} />
      <WeekFields
        weekly={rush.weekly}
        path={['rush', 'weekly']}
        onChange={(weekly, said) => commit({ weekly }, said)}
      />
      <ExceptionFields
        exceptions={rush.exceptions}
        path={['rush', 'exceptions']}
        onChange={(exceptions, said) => commit({ exceptions }, said)}
      />
    </PartFrame>
  );
}
