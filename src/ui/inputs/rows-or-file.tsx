import type { ComponentChildren } from 'preact';
import { FieldFrame } from './field.tsx';

/** Files that hold rows, as a browser's dialog is told of them. */
export const TABLE_FILES = '.csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain';

interface RowsOrFileProps {
  readonly label: string;
  readonly example: string;
  readonly lines?: number;
  readonly text: string;
  readonly onText: (text: string) => void;
  /** What the button says that opens the browser's dialog, and which files it offers. */
  readonly choose: string;
  readonly accept: string;
  readonly onFile: (file: File) => void;
  readonly onRows: (text: string) => void;
  /** Further buttons. */
  readonly children?: ComponentChildren;
}

/** Takes rows in, as a file or pasted: nothing happens to them before they are looked at. */
export function RowsOrFile(props: RowsOrFileProps) {
  const { label, example, lines = 5, text, onText, choose, accept, onFile, onRows, children } = props;
  return (
    <>
      <FieldFrame label={label} wide>
        {({ id }) => (
          <textarea
            id={id}
            rows={lines}
            value={text}
            placeholder={example}
            spellcheck={false}
            onInput={(event) => onText(event.currentTarget.value)}
          />
        )}
      </FieldFrame>
      <div class="row">
        <label class="button main">
          {choose}
          <input
            type="file"
            class="visually-hidden"
            accept={accept}
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              // The same file, mended, can be chosen again.
              event.currentTarget.value = '';
              if (file !== undefined) onFile(file);
            }}
          />
        </label>
        <button type="button" disabled={text.trim() === ''} onClick={() => onRows(text)}>
          Preview rows
        </button>
        {children}
      </div>
    </>
  );
}
