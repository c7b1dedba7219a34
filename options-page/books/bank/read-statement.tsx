import { useState } from 'preact/hooks';
import { type OpenedStatement, openStatement } from '../../../src/intake/bank/open-statement.ts';
import { decodeText } from '../../../src/intake/csv/decode-text.ts';
import { FieldFrame } from '../../../src/ui/inputs/field.tsx';
import { StatementReview } from './statement-review.tsx';

const EXAMPLE = 'Date,Description,Amount,Balance\n11/27/2026,CHECK 1042,-450.00,18204.11';
/** A statement of years is smaller. */
const LARGEST_BYTES = 40_000_000;

/** Takes a statement in, as a file or as pasted rows. */
export function ReadStatement() {
  const [opened, setOpened] = useState<{ readonly statement: OpenedStatement; readonly file: string }>();
  const [fault, setFault] = useState<string>();
  const [text, setText] = useState('');
  const take = (content: string, file: string) => {
    const statement = openStatement(content);
    setFault(statement.ok ? undefined : `${file}: ${statement.message}`);
    setOpened(statement.ok ? { statement: statement.value, file } : undefined);
  };
  const takeFile = async (file: File) => {
    if (file.size > LARGEST_BYTES) return setFault(`${file.name} is larger than 40 MB. Export a shorter time.`);
    try {
      const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
      if (decoded.ok) take(decoded.value.text, file.name);
      else setFault(`${file.name}: ${decoded.message}`);
    } catch {
      setFault(`The browser could not read ${file.name}. If it is open elsewhere, close it and choose it again.`);
    }
  };
  return (
    <>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault} Nothing was read.
        </p>
      )}
      {opened === undefined ? (
        <details class="panel no-print" open>
          <summary>
            <strong>Read a statement</strong>
          </summary>
          <div class="stack">
            <FieldFrame label="Rows of the statement" wide>
              {({ id }) => (
                <textarea
                  id={id}
                  rows={4}
                  value={text}
                  placeholder={EXAMPLE}
                  spellcheck={false}
                  onInput={(event) => setText(event.currentTarget.value)}
                />
              )}
            </FieldFrame>
            <div class="row">
              <label class="button main">
                Choose a CSV or OFX file
                <input
                  type="file"
                  class="visually-hidden"
                  accept=".csv,.tsv,.txt,.ofx,text/csv,application/x-ofx"
                  onChange={(event) => {
                    const file = event.currentTarget.files?.[0];
                    event.currentTarget.value = '';
                    if (file) takeFile(file);
                  }}
                />
              </label>
              <button type="button" disabled={text.trim() === ''} onClick={() => take(text, 'The pasted rows')}>
                Preview rows
              </button>
            </div>
          </div>
        </details>
      ) : (
        <StatementReview
          key={opened.file}
          opened={opened.statement}
          file={opened.file}
          onDone={() => {
            setOpened(undefined);
            setText('');
          }}
        />
      )}
    </>
  );
}
