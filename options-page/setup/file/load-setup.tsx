import { useId, useState } from 'preact/hooks';
import { faultSentence } from '../../../src/domain/setup/setup-faults.ts';
import { LARGEST_SETUP_BYTES, readSetupFile, type SetupReading } from '../../../src/domain/setup/setup-file.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { LoadPreview } from './load-preview.tsx';

interface ChosenFile {
  readonly name: string;
  readonly reading: SetupReading;
}

/** A setup from a file: checked whole, shown against the present one, taken only when asked. */
export function LoadSetup() {
  const [chosen, setChosen] = useState<ChosenFile>();
  const [root, focusNext] = useFocusNext<HTMLElement>();
  const id = useId();
  const choose = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    focusNext('read');
    setChosen({ name: file.name, reading: await readChosen(file) });
    // Choosing the same file again, mended, is then a change too.
    input.value = '';
  };
  return (
    <section class="stack" ref={root}>
      <h2>Load</h2>
      <p class="field">
        <label class="label" for={id}>
          Setup file
        </label>
        <input
          id={id}
          type="file"
          accept=".json,application/json"
          onChange={(event) => choose(event.currentTarget)}
          data-focus="file"
        />
        <span class="quiet small">
          The file is checked first, and you see what would change. Nothing leaves this computer.
        </span>
      </p>
      {chosen && (
        <div class="stack" tabIndex={-1} data-focus="read">
          {chosen.reading.ok ? (
            <LoadPreview
              name={chosen.name}
              loaded={chosen.reading.value}
              onDone={() => {
                focusNext('file');
                setChosen(undefined);
              }}
            />
          ) : (
            <div class="note warning stack" role="alert">
              <p class="strong">
                {chosen.name} can’t be loaded, and nothing was changed.{' '}
                {chosen.reading.faults.length > 1 && `${chosen.reading.faults.length} problems:`}
              </p>
              <ul class="plain-list">
                {chosen.reading.faults.map((fault) => (
                  <li key={`${fault.path.join('.')} ${fault.message}`}>{faultSentence(fault)}</li>
                ))}
              </ul>
            </div>
          )}
        </div>
      )}
    </section>
  );
}

async function readChosen(file: File): Promise<SetupReading> {
  if (file.size > LARGEST_SETUP_BYTES)
    return unreadable('This file is too large for a setup. Choose a file saved by Setup.');
  try {
    return readSetupFile(await file.text());
  } catch {
    // The disk, the drive or the permission is gone; the browser does not say which.
    return unreadable('The file could not be read. Check that it is still there, and choose it again.');
  }
}

const unreadable = (message: string): SetupReading => ({ ok: false, faults: [{ path: [], place: '', message }] });
