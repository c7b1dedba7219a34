import { useRef, useState } from 'preact/hooks';
import { ATTACHMENT_KINDS, type AttachmentKind } from '../../src/domain/sale/attachment.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { ATTACHMENT_WORDS } from '../../src/journal/happenings/attachments-words.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** Keeps pictures and papers with the lot. */
export function FilesPart({ lot }: { lot: LotState }) {
  const { store, say } = useWorkspace();
  const [about, setAbout] = useState<AttachmentKind>('photo');
  const [note, setNote] = useState('');
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const keep = async (files: readonly File[]) => {
    setBusy(true);
    setFault(undefined);
    let kept = 0;
    for (const file of files) {
      const answer = await store.keepAttachment(lot.id, {
        bytes: file,
        name: file.name,
        about,
        ...(note.trim() !== '' && { note: note.trim().slice(0, 2000) }),
      });
      // Those before it stay kept; the sentence names the one that was not.
      if (!answer.ok) {
        setFault(`${file.name}: ${answer.message}`);
        break;
      }
      kept += 1;
      if (answer.value.warning !== null) setFault(answer.value.warning);
      say(`${file.name} saved.`, answer.value.entries[0]?.id);
    }
    if (kept === files.length) setNote('');
    if (input.current) input.current.value = '';
    setBusy(false);
  };
  const here = lot.attachments?.length ?? 0;
  return (
    <section class="panel stack no-print">
      <h2>Files{here === 0 ? '' : ` (${here.toLocaleString('en-US')})`}</h2>
      <p>Pictures and papers are saved with the lot on this computer and are in every backup.</p>
      <div class="fields">
        <label class="field">
          <span class="label">What it is</span>
          <select
            value={about}
            onChange={(event) =>
              setAbout(ATTACHMENT_KINDS.find((kind) => kind === event.currentTarget.value) ?? 'other')
            }
          >
            {ATTACHMENT_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {ATTACHMENT_WORDS[kind]}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span class="label">Note (optional)</span>
          <input value={note} onInput={(event) => setNote(event.currentTarget.value)} />
        </label>
        <label class="field wide">
          <span class="label">Choose files</span>
          <input
            ref={input}
            type="file"
            multiple
            disabled={busy}
            onChange={(event) => {
              const files = [...(event.currentTarget.files ?? [])];
              if (files.length > 0) keep(files).catch((error: unknown) => setFault(String(error)));
            }}
          />
        </label>
      </div>
      {busy && <p role="status">Saving…</p>}
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}
