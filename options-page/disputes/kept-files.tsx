import { useEffect, useState } from 'preact/hooks';
import type { LotState } from '../../src/folds/lot-state.ts';
import { saveFile } from '../../src/ui/save-file.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** Only pictures made of dots are shown; anything else that came from outside is saved and not opened. */
const SHOWN = /^image\/(png|jpeg|webp|gif)$/;

/** The files that a step names, by the names they came with. */
export function KeptFiles({ lot, hashes }: { lot: LotState; hashes: readonly string[] }) {
  return (
    <span class="kept-files">
      {hashes.map((hash) => (
        <KeptFile key={hash} lot={lot} hash={hash} />
      ))}
    </span>
  );
}

function KeptFile({ lot, hash }: { lot: LotState; hash: string }) {
  const { store, say } = useWorkspace();
  const file = lot.attachments?.find((each) => each.hash === hash);
  const [url, setUrl] = useState<string>();
  useEffect(() => () => void (url !== undefined && URL.revokeObjectURL(url)), [url]);
  const read = async (then: (blob: Blob) => void) => {
    const blob = await store.readAttachment(hash);
    if (blob === null)
      say('This file’s contents are not on this computer. They may be in a backup from another computer.');
    else then(blob);
  };
  const name = file?.name ?? 'a file that was undone';
  if (url !== undefined) {
    return (
      <span class="stack">
        <img class="kept-picture" src={url} alt={name} />
        <button type="button" class="plain no-print" onClick={() => setUrl(undefined)}>
          Hide {name}
        </button>
      </span>
    );
  }
  const shows = SHOWN.test(file?.mediaType ?? '');
  return (
    <button
      type="button"
      class="plain"
      onClick={() => read((blob) => (shows ? setUrl(URL.createObjectURL(blob)) : saveFile(blob, file?.name ?? 'file')))}
    >
      {shows ? 'Show' : 'Save'} {name}
    </button>
  );
}
