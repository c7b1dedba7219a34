import type { AlertRules } from '../../../src/domain/setup/alert-rules.ts';
import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';
import { TimeOfDayInput } from '../../../src/ui/inputs/time-of-day-input.tsx';
import { timeInWords } from '../../../src/views/words/time-of-day-words.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { callExample } from './call-example.ts';
import { readDeadlineLeads, readLeads } from './read-leads.ts';
import { SwitchedField } from './switched-field.tsx';
import { ThisBrowser } from './this-browser.tsx';

const writeLeads = (leads: readonly number[]) => leads.join(', ');
/** Whole hours as such, anything else in minutes. */
const writeHours = (leads: readonly number[]) =>
  leads.map((lead) => (lead % 60 === 0 ? `${lead / 60} h` : `${lead} min`)).join(', ');

/** When the tool speaks up. */
export function AlertsPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { alerts } = setup;
  const commit = (set: Partial<AlertRules>, said: string) => change({ alerts: { ...alerts, ...set } }, said);
  return (
    <PartFrame
      part={part}
      intro="You get reminders before each close that needs a bid: quiet ones first, and the last one with a sound and time to act. A sleeping computer or a closed browser can’t remind you; what was missed is shown at once, labeled late."
    >
      <fieldset class="stack">
        <legend>Before each close</legend>
        <div class="fields">
          <ReadInput<number[]>
            label="Minutes before"
            value={alerts.leadMinutes}
            write={writeLeads}
            read={readLeads}
            required
            hint="Several, like 30, 10. Only the last makes a sound"
            onCommit={(leadMinutes) =>
              leadMinutes && commit({ leadMinutes }, `Reminders ${writeLeads(leadMinutes)} minutes before a close.`)
            }
          />
          <ReadInput<number[]>
            label="When the proxy is placed"
            value={alerts.placedLeadMinutes}
            write={writeLeads}
            read={readLeads}
            hint="Blank: no reminder then"
            onCommit={(leads = []) => commit({ placedLeadMinutes: leads }, 'Reminders for placed proxies saved.')}
          />
          <NumberInput
            label="Combine reminders within"
            value={alerts.reactionMinutes}
            least={0}
            most={60}
            unit="min"
            required
            hint="Nobody can watch closings this close together one by one"
            onCommit={(reactionMinutes = 0) => commit({ reactionMinutes }, 'Combined reminders saved.')}
          />
        </div>
        <p class="small setup-prose">{callExample(alerts)}</p>
        <SwitchedField<number>
          label="Limit reminders by the hour"
          value={alerts.hourlyMost}
          atFirst={6}
          onCommit={(hourlyMost) =>
            commit({ hourlyMost }, hourlyMost === null ? 'No limit by the hour.' : `At most ${hourlyMost} an hour.`)
          }
        >
          {(value, set) => (
            <NumberInput
              label="At most, an hour"
              value={value}
              least={1}
              most={60}
              required
              hint="A last reminder with a bid to make always comes. What is held back is on the Now screen"
              onCommit={(next) => next !== undefined && set(next)}
            />
          )}
        </SwitchedField>
      </fieldset>
      <fieldset class="stack">
        <legend>Around the busy hours</legend>
        <SwitchedField<LocalTime>
          label="The evening before, list what closes in them"
          value={alerts.digestAt}
          atFirst={'19:00' as LocalTime}
          onCommit={(digestAt) =>
            commit({ digestAt }, digestAt === null ? 'Evening list off.' : `Evening list at ${timeInWords(digestAt)}.`)
          }
        >
          {(value, set) => (
            <TimeOfDayInput label="At" value={value} required onCommit={(next) => next !== undefined && set(next)} />
          )}
        </SwitchedField>
        <SwitchedField<number>
          label="Remind me before they begin"
          value={alerts.beforeRushMinutes}
          atFirst={30}
          onCommit={(beforeRushMinutes) => commit({ beforeRushMinutes }, 'Reminder before busy hours saved.')}
        >
          {(value, set) => <Minutes label="Ahead" value={value} most={1440} onCommit={set} />}
        </SwitchedField>
        <div class="fields">
          <NumberInput
            label="Include closings within"
            value={alerts.nearMinutes}
            least={0}
            most={720}
            unit="min"
            required
            hint="Of the busy hours, before or after"
            onCommit={(nearMinutes = 0) => commit({ nearMinutes }, 'Saved.')}
          />
        </div>
      </fieldset>
      <fieldset class="stack">
        <legend>After each close</legend>
        <SwitchedField<number>
          label="Ask how it ended"
          value={alerts.afterCloseMinutes}
          atFirst={5}
          onCommit={(afterCloseMinutes) => commit({ afterCloseMinutes }, 'Question after a close saved.')}
        >
          {(value, set) => <Minutes label="After" value={value} most={1440} onCommit={set} />}
        </SwitchedField>
      </fieldset>
      <fieldset class="stack">
        <legend>Before each deadline after the sale</legend>
        <div class="fields">
          <ReadInput<number[]>
            label="Hours before"
            value={alerts.deadlineLeadMinutes}
            write={writeHours}
            read={readDeadlineLeads}
            required
            hint="Several, like 24, 3: paying, papers, claims and answers"
            onCommit={(deadlineLeadMinutes) =>
              deadlineLeadMinutes &&
              commit({ deadlineLeadMinutes }, `Reminders ${writeHours(deadlineLeadMinutes)} before a deadline.`)
            }
          />
        </div>
      </fieldset>
      <ThisBrowser />
    </PartFrame>
  );
}

interface MinutesProps {
  readonly label: string;
  readonly value: number;
  readonly most: number;
  readonly onCommit: (minutes: number) => void;
}

function Minutes({ label, value, most, onCommit }: MinutesProps) {
  return (
    <NumberInput
      label={label}
      value={value}
      least={1}
      most={most}
      unit="min"
      required
      onCommit={(next) => next !== undefined && onCommit(next)}
    />
  );
}
