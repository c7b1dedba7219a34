import { sha256 } from './hash.mjs';
import { line, textOf } from './pack.mjs';

/** The parts of a backup: the header, the entries, the lines of the files, the checksum. */
export function openBackup(text) {
  const rows = text.split('\n');
  if (rows.pop() !== '') throw new Error('the honest backup does not end with a line feed');
  const lines = rows.map((row) => line(JSON.parse(row), row));
  const header = lines.shift();
  const end = lines.pop();
  const firstFile = lines.findIndex(({ value }) => 'file' in value);
  const at = firstFile < 0 ? lines.length : firstFile;
  return { header, entries: lines.slice(0, at), files: lines.slice(at), end };
}

/**
 * The text again.
 * @param header `anew`: the counts of entries and the heads fit the entries; `keep`: as it was
 * @param checksum `anew` or `keep`
 */
export function closeBackup(backup, { header = 'anew', checksum = 'anew' } = {}) {
  if (header === 'anew') fitHeader(backup);
  const rows = [backup.header, ...backup.entries, ...backup.files].filter(Boolean).map((row) => `${textOf(row)}\n`);
  const text = rows.join('');
  if (!backup.end) return text;
  const end = checksum === 'anew' ? line({ ...backup.end.value, sha256: sha256(text) }) : backup.end;
  return `${text}${textOf(end)}\n`;
}

/** The counts of entries and the heads again from the entries. */
export function fitHeader(backup) {
  if (!backup.header) return;
  const { value } = backup.header;
  const entries = backup.entries.map((row) => row.value).filter((one) => typeof one?.device === 'string');
  const counts = { ...value.counts, entries: backup.entries.length };
  backup.header = line({ ...value, counts, heads: headsOf(entries, value.heads) });
}

export function headsOf(entries, old = []) {
  const heads = new Map();
  for (const { device, sequence, hash } of entries)
    if (sequence > (heads.get(device)?.sequence ?? 0)) {
      const was = old.find((head) => head.device === device);
      heads.set(device, { ...was, device, sequence, hash });
    }
  return [...heads.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
}

/** The files with their lines: where each begins, and how many lines of bytes it has. */
export function filesOf(backup) {
  const files = [];
  for (const [at, { value }] of backup.files.entries()) {
    if ('file' in value) files.push({ at, file: value.file, parts: [] });
    else if ('bytes' in value) files.at(-1)?.parts.push(at);
  }
  return files;
}
