import { type Outcome, refuse } from '../domain/outcome.ts';
import { decodeText, LARGEST_FILE_BYTES } from './csv/decode-text.ts';
import { openTable, type Table } from './open-table.ts';

/** Opens a file that the user chose or dropped, whatever it is encoded in. */
export async function openFile(file: Blob): Promise<Outcome<Table>> {
  if (file.size > LARGEST_FILE_BYTES) {
    return refuse('too-large', 'The file is larger than 200 MB. Split it, or leave out columns that are not needed.');
  }
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    const reason = error instanceof Error ? ` (${error.message})` : '';
    return refuse(
      'unreadable',
      `The browser could not read the file${reason}. If it is open elsewhere, close it and choose it again.`,
    );
  }
  const decoded = decodeText(bytes);
  return decoded.ok ? openTable(decoded.value.text) : decoded;
}
