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
      intro="The hours when everyone is with customers, in the store’s time. Closings in them or near them get their own warnings the evening before and ahead of the rush."
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
