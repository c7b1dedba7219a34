import { useState } from 'preact/hooks';
import { madeUpRow } from '../../src/demo/made-up-row.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { FieldFrame } from '../../src/ui/inputs/field.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

interface ChooseSourceProps {
  readonly fault: string | undefined;
  readonly onFile: (file: File) => Promise<void>;
  readonly onText: (text: string) => void;
}

/** Three ways in, each with what it takes. */
export function ChooseSource({ fault, onFile, onText }: ChooseSourceProps) {
  const { addLot, say, setup } = useWorkspace();
  const example = madeUpRow(dateIn(setup.store.zone, instant(Date.now())));
  const [text, setText] = useState('');
  const [over, setOver] = useState(false);
  const typeOne = async () => {
    const added = await addLot('typed', { facts: {}, evidence: {} });
    if (!added.ok) return say(added.message);
    say('Added a lot with no name. Enter what it is.', added.value.entry);
    location.assign(`#/lot/${added.value.id}`);
  };
  return (
    <>
      {fault && (
        <p class="note warning" role="alert">
          {fault} Nothing was saved.
        </p>
      )}
      <section
        class={over ? 'panel stack drop over' : 'panel stack drop'}
        aria-label="A file or pasted rows"
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          const file = event.dataTransfer?.files[0];
          if (file) onFile(file);
        }}
      >
        <h2>A whole list</h2>
        <p>
          Paste rows from a spreadsheet, choose a CSV file, or drop one here. Most headings are recognized. You see
          every row and every problem before anything is saved.
        </p>
        <FieldFrame label="Rows" wide>
          {({ id }) => (
            <textarea
              id={id}
              class="paste-box"
              rows={8}
              value={text}
              placeholder={example}
              spellcheck={false}
              onInput={(event) => setText(event.currentTarget.value)}
            />
          )}
        </FieldFrame>
        <div class="row">
          <button type="button" class="main" disabled={text.trim() === ''} onClick={() => onText(text)}>
            Preview rows
          </button>
          <label class="button">
            Choose a file
            <input
              type="file"
              class="visually-hidden"
              accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = '';
                if (file) onFile(file);
              }}
            />
          </label>
          {text === '' && (
            <button type="button" class="plain" onClick={() => setText(example)}>
              Try a made-up row
            </button>
          )}
        </div>
      </section>
      <section class="panel stack">
        <h2>One lot by hand</h2>
        <p>Opens an empty worksheet. You can save a lot with gaps and fill them in later.</p>
        <div class="row">
          <button type="button" onClick={typeOne}>
            Enter a lot
          </button>
        </div>
      </section>
    </>
  );
}
