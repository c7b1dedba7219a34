import { useEffect, useState } from 'preact/hooks';
import type { Attachment } from '../../src/domain/sale/attachment.ts';
import { sayBytes } from '../../src/store/attachments/storage-room.ts';
import { saveFile } from '../../src/ui/save-file.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

const PICTURE = /^image\/(?:png|jpeg|webp|gif|avif)$/;

/** A kept file: a picture is shown, anything else can be saved and is never opened inside the extension. */
export function KeptFile({ file }: { file: Attachment }) {
  const { store, say } = useWorkspace();
  const [address, setAddress] = useState<string | null>();
  const picture = PICTURE.test(file.mediaType);
  useEffect(() => {
    if (!picture) return;
    let made: string | null = null;
    let current = true;
    store.readAttachment(file.hash).then(
      (blob) => {
        if (!current) return;
        made = blob === null ? null : URL.createObjectURL(blob);
        setAddress(made);
      },
      (error: unknown) => say(String(error)),
    );
    return () => {
      current = false;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [store, file.hash, picture, say]);
  const save = async () => {
    const blob = await store.readAttachment(file.hash);
    if (blob === null) say(`${file.name} is missing: the journal lists it, but its contents are not here.`);
    else saveFile(new Blob([blob], { type: 'application/octet-stream' }), file.name);
  };
  return (
    <figure class="kept-file">
      {picture && typeof address === 'string' && <img src={address} alt={file.note ?? file.name} />}
      {address === null && <p class="note warning">Its contents are missing. Restore a backup that has them.</p>}
      <figcaption class="row small">
        <span>{sayBytes(file.sizeBytes)}</span>
        <code class="quiet" title="SHA-256 of the file">
          {file.hash.slice(0, 12)}
        </code>
        <button
          type="button"
          class="plain no-print"
          aria-label={`Save ${file.name}`}
          onClick={() => {
            save().catch((error: unknown) => say(String(error)));
          }}
        >
          Save
        </button>
      </figcaption>
    </figure>
  );
}
