import { useId } from 'preact/hooks';

export interface FilePickProps {
  /** Said to a screen reader. */
  readonly label: string;
  readonly words: string;
  readonly onPick: (files: readonly File[]) => void;
}

/** A button that asks for files. The browser's own box does the asking, and is reached by the keyboard. */
export function FilePick({ label, words, onPick }: FilePickProps) {
  const id = useId();
  return (
    <span class="file-pick">
      <input
        id={id}
        type="file"
        multiple
        aria-label={label}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          // The same file can be chosen again after an undo.
          event.currentTarget.value = '';
          if (files.length > 0) onPick(files);
        }}
      />
      <label class="button" for={id} aria-hidden="true">
        {words}
      </label>
    </span>
  );
}
