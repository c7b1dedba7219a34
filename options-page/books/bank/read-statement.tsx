import { useState } from 'preact/hooks';
import { type OpenedStatement, openStatement } from '../../../src/intake/bank/open-statement.ts';
import { decodeText } from '../../../src/intake/csv/decode-text.ts';
import { RowsOrFile } from '../../../src/ui/inputs/rows-or-file.tsx';
import { StatementReview } from './statement-review.tsx';

const EXAMPLE = 'Date,Description,Amount,Balance\n11/27/2026,CHECK 1042,-450.00,18204.11';
/** A statement of years is smaller. */
const LARGEST_BYTES = 40_000_000;

/** Takes a statement in, as a file or as pasted rows; folded once there is one, so that what is open stands in sight. */
export function ReadStatement({ first }: { readonly first: boolean }) {
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
        <details class="panel no-print" open={first}>
          <summary>
            <strong>Read a statement</strong>
          </summary>
          <div class="stack">
            <RowsOrFile
              label="Rows of the statement"
              example={EXAMPLE}
              lines={4}
              text={text}
              onText={setText}
              choose="Choose a CSV or OFX file"
              accept=".csv,.tsv,.txt,.ofx,text/csv,application/x-ofx"
              onFile={takeFile}
              onRows={(rows) => take(rows, 'The pasted rows')}
            />
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
