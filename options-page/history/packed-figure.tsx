import { useEffect, useState } from 'preact/hooks';
import type { PackedFile } from '../../src/journal/pack/check-files.ts';
import { saveFile } from '../../src/ui/save-file.ts';

/** What browsers draw as a picture without running anything. */
const PICTURE = /^image\/(?:png|jpeg|webp|gif|avif)$/;

/** A file out of a pack, with the very bytes that were checked: a picture is shown, anything else can be saved. */
export function PackedFigure({ file: { name, mediaType, bytes } }: { file: PackedFile }) {
  const [address, setAddress] = useState<string>();
  const picture = PICTURE.test(mediaType);
  useEffect(() => {
    if (!picture) return;
    const made = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes, mediaType, picture]);
  return (
    <figure class="kept-file">
      {address !== undefined && <img src={address} alt={name} />}
      <figcaption class="row small">
        <bdi>{name}</bdi>
        {!picture && (
          <button
            type="button"
            class="plain"
            onClick={() => saveFile(new Blob([bytes], { type: 'application/octet-stream' }), name)}
          >
            Save
          </button>
        )}
      </figcaption>
    </figure>
  );
}
