import { useState } from 'preact/hooks';
import { saveFile } from '../save-file.ts';
import { useWorkspace } from '../workspace.ts';
import { type CalendarChoice, calendarFile } from './calendar-file.ts';

interface SaveCalendarProps {
  readonly label: string;
  readonly choice: CalendarChoice;
  /** The file's name without its ending. */
  readonly name: string;
}

/** Saves closings as a file that any calendar reads. */
export function SaveCalendar({ label, choice, name }: SaveCalendarProps) {
  const { store, setup, say } = useWorkspace();
  const [busy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    try {
      const file = await calendarFile(store, setup, choice);
      if (!file.ok) return say(file.message);
      const { blob, left } = file.value;
      saveFile(blob, `${name}.ics`);
      if (left.length > 0) return say(`The calendar file is saved without ${left.length} of the lots. ${left[0]}`);
      say(
        'Calendar file saved. Open it in your calendar; a later file updates what is there. It shows your max bids, so use a calendar that only your store sees.',
      );
    } finally {
      setBusy(false);
    }
  };
  return (
    <button type="button" onClick={save} aria-busy={busy} disabled={busy}>
      {label}
    </button>
  );
}
