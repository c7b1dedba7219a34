import { useCallback, useEffect, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { About } from '../../src/store/connection/about.ts';
import { saveFile } from '../../src/ui/save-file.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { CheckPart } from './check-part.tsx';
import { NotePart } from './note-part.tsx';
import { PromiseNote } from './promise-note.tsx';
import { RestorePart } from './restore-part.tsx';
import { RoomNote } from './room-note.tsx';
import { StampPart } from './stamp-part.tsx';

/** Everything out in one file, the same file in, and a look at whether the journal is whole. */
export function KeepScreen() {
  const { store, setup, say } = useWorkspace();
  const [about, setAbout] = useState<About>();
  const [busy, setBusy] = useState(false);
  const look = useCallback(() => {
    store.about().then(setAbout, (error: unknown) => say(String(error)));
  }, [store, say]);
  useEffect(() => {
    look();
    return store.subscribe(look);
  }, [look, store]);

  const backup = async () => {
    setBusy(true);
    try {
      const file = await store.backup();
      const day = new Date(file.header.exportedAt).toISOString().slice(0, 10);
      saveFile(file.blob, `headroom-${day}.backup.jsonl`);
      const noted = await store.noteBackup(file);
      say(
        noted.ok
          ? `Backup saved to your downloads: ${countWords(file.header.counts.entries, 'entry', 'entries')}${andFiles(file.files)}.${leftOut(file.damaged)}`
          : noted.message,
      );
      look();
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    } finally {
      setBusy(false);
    }
  };

  return (
    <div class="stack loose keep">
      <div class="stack">
        <h1>Backup</h1>
        <p>
          All your data is on this computer and belongs to you. Nothing is sent anywhere unless this browser is in a
          team, and a team is no backup. Save one now and then.
        </p>
      </div>
      <section class="panel stack">
        <h2>Back up to one file</h2>
        {about === undefined ? (
          <p role="status">Counting…</p>
        ) : (
          <p>
            {countWords(about.lots, 'lot', 'lots')}, {countWords(about.entries, 'journal entry', 'journal entries')}.{' '}
            {about.lastBackup === null ? (
              <strong>No backup was saved from this browser yet.</strong>
            ) : (
              `The last backup was saved ${sayTime(about.lastBackup.at, setup.store.zone)}; ${countWords(
                about.entries - about.lastBackup.entries,
                'entry has',
                'entries have',
              )} been added since.`
            )}
          </p>
        )}
        <RoomNote />
        <PromiseNote />
        {about !== undefined && about.unknown > 0 && (
          <p class="note warning">
            {countWords(about.unknown, 'entry was', 'entries were')} written by a newer Headroom. They are safe, and
            will show once you update this one.
          </p>
        )}
        <div class="row">
          <button type="button" class="main" disabled={busy} onClick={backup}>
            {busy ? 'Writing…' : 'Save a backup'}
          </button>
        </div>
      </section>
      <RestorePart />
      <CheckPart />
      <section class="panel stack">
        <NotePart heads={about?.heads ?? []} />
      </section>
      <StampPart head={about?.heads.find(({ device }) => device === about.device)} />
    </div>
  );
}

function andFiles(files: number): string {
  return files === 0 ? '' : ` and ${countWords(files, 'attached file', 'attached files')}`;
}

function leftOut(damaged: number): string {
  return damaged === 0
    ? ''
    : ` ${countWords(damaged, 'attached file was', 'attached files were')} damaged and left out.`;
}
