import type { RestorePreview } from '../../src/store/backup/compare-with-journal.ts';
import type { Backup } from '../../src/store/backup/read-backup.ts';
import { BACKUP_NOT_SHOWN, sayProvedOfBackup } from '../../src/store/backup/say-backup.ts';

/** Whether something in a backup does not fit, although the file is whole. */
export const isWrong = ({ findings, faults }: Backup): boolean => findings.length + faults.length > 0;

interface VerdictProps {
  readonly name: string;
  readonly backup: Backup;
  readonly preview: RestorePreview;
  readonly savedAt: string;
}

/** What a check of a backup found, before anything is restored from it. */
export function BackupVerdict({ name, backup, preview, savedAt }: VerdictProps) {
  const wrong = [...backup.faults, ...backup.findings.map(({ message }) => message)];
  return (
    <>
      <p>
        {name} says that it was saved {savedAt}. {preview.added.toLocaleString('en-US')} of its entries are new here
        {preview.newPlaces === '' ? '.' : `: ${preview.newPlaces}.`}
      </p>
      {wrong.length > 0 && (
        <div class="note warning stack">
          <p>What does not fit in it:</p>
          <Sentences all={wrong.slice(0, 5)} />
        </div>
      )}
      {preview.conflict && <p class="note warning">{preview.conflict.message}</p>}
      {backup.told.length > 0 && (
        <div class="note warning stack">
          <p>What to know about it:</p>
          <Sentences all={backup.told.slice(0, 10)} />
        </div>
      )}
      <Sentences all={sayProvedOfBackup(backup)} />
      <p class="small">What the check can’t show:</p>
      <Sentences all={BACKUP_NOT_SHOWN} small />
    </>
  );
}

function Sentences({ all, small = false }: { all: readonly string[]; small?: boolean }) {
  return (
    <ul class={small ? 'plain-list small' : 'plain-list'}>
      {all.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
