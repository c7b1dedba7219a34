import { filesOf, openBackup } from '../lib/backup.mjs';
import { NotApplicable } from '../lib/case.mjs';
import { innerOf } from '../lib/chain.mjs';
import { sha256 } from '../lib/hash.mjs';
import { respelled } from './pictures.mjs';

/** What is done to the attached files of a backup; each way is a sentence of the table. The checksum is made anew. */
export function changeFiles(it, { how, close }) {
  const { backup } = it;
  const files = filesOf(backup);
  const [one, two] = files;
  const large = files.find(({ parts }) => parts.length > 1);
  if (one === undefined || large === undefined) throw new NotApplicable('the sample has no files');
  const lines = backup.files;
  const head = (at, set) => (lines[at] = { value: { file: { ...lines[at].value.file, ...set } } });
  const bytes = (at, text) => (lines[at] = { value: { bytes: text } });
  switch (how) {
    case 'all gone':
      lines.length = 0;
      break;
    case 'one gone':
      lines.splice(one.at, 1 + one.parts.length);
      break;
    case 'two change places': {
      const [a, b] = [lines[one.parts[0]], lines[two.parts[0]]];
      lines[one.parts[0]] = b;
      lines[two.parts[0]] = a;
      break;
    }
    case 'one bit': {
      const data = Buffer.from(lines[one.parts[0]].value.bytes, 'base64');
      data[100] ^= 1;
      bytes(one.parts[0], data.toString('base64'));
      break;
    }
    case 'replaced, with its own hash': {
      const data = Buffer.from('another picture');
      head(one.at, { hash: sha256(data), sizeBytes: data.length });
      bytes(one.parts[0], data.toString('base64'));
      break;
    }
    case 'one more that nobody names': {
      const data = Buffer.from('nobody named this');
      lines.push({ value: { file: { hash: sha256(data), sizeBytes: data.length, mediaType: 'text/html' } } });
      lines.push({ value: { bytes: data.toString('base64') } });
      break;
    }
    case 'size one more':
      head(one.at, { sizeBytes: one.file.sizeBytes + 1 });
      break;
    case 'size far too large':
      head(one.at, { sizeBytes: 2 ** 52 });
      break;
    case 'other kind':
      head(one.at, { mediaType: 'text/html' });
      break;
    case 'the same twice':
      lines.push(...lines.slice(one.at, one.at + 1 + one.parts.length));
      break;
    case 'same hash, other bytes, before the true':
      lines.unshift({ value: lines[one.at].value }, { value: { bytes: 'AAAA' } });
      break;
    case 'one part missing':
      lines.splice(large.parts[1], 1);
      break;
    case 'parts in another order': {
      const [a, b] = large.parts;
      [lines[a], lines[b]] = [lines[b], lines[a]];
      break;
    }
    case 'a part too long': {
      const text = large.parts.map((at) => lines[at].value.bytes).join('');
      lines.splice(large.parts[0], large.parts.length, { value: { bytes: text } });
      break;
    }
    case 'a part of nothing':
      lines.splice(one.parts[0], 0, { value: { bytes: '' } });
      break;
    case 'a million parts of nothing':
      // One row with many lines in it: a million arguments are too many for a call.
      lines.splice(one.parts[0], 0, { value: {}, raw: Array(1_000_000).fill('{"bytes":""}').join('\n') });
      break;
    case 'bytes without a file':
      lines.splice(0, 1);
      break;
    case 'file without bytes':
      lines.splice(one.parts[0], one.parts.length);
      break;
    case 'before the entries':
      backup.entries.unshift(...lines.splice(0, 1 + one.parts.length));
      break;
    case 'among the entries':
      backup.entries.splice(5, 0, ...lines.splice(0, 1 + one.parts.length));
      break;
    case 'an entry after the files':
      lines.push(backup.entries.pop());
      return it.close({ header: 'keep', ...close });
    case 'more in its line':
      lines[one.at] = { value: { ...lines[one.at].value, note: 'seen by the sale' } };
      break;
    case 'name like a path in its line':
      lines[one.at] = { value: { file: { ...one.file, name: '../../start.js' } } };
      break;
    case 'of another backup': {
      const other = openBackup(it.other('backup-files.jsonl'));
      lines.push(...other.files.slice(0, 2));
      break;
    }
    default:
      throw new Error(`unknown way: ${how}`);
  }
  return it.close({ header: 'keep', ...close });
}

/** Another spelling of a file's bytes. */
export function respellFile(it, { how, close }) {
  const { backup } = it;
  const padded = how === 'padding bits' || how === 'no padding' || how === 'more padding';
  const at = backup.files.findIndex(({ value }) => 'bytes' in value && (!padded || value.bytes.endsWith('=')));
  if (at < 0) throw new NotApplicable('no file has padding');
  backup.files[at] = { value: { bytes: respelled(backup.files[at].value.bytes, how) } };
  return it.close({ header: 'keep', ...close });
}

/** The header: gone, there twice, not the first line. */
export function moveHeader(it, { how }) {
  const { backup } = it;
  const { header } = backup;
  if (how === 'gone') backup.header = null;
  if (how === 'twice') backup.entries.unshift(header);
  if (how === 'second') {
    backup.header = backup.entries[0];
    backup.entries[0] = header;
  }
  return it.close({ header: 'keep' });
}

/** An entry that names a file says another size of it, and the chain is made anew. */
export function sizeInEntry(it, { close }) {
  const at = it.one({ kind: 'attachment-kept' });
  const inner = innerOf(it.rows[at], 'backup');
  const { attachment } = inner.happening;
  it.rows[at] = {
    value: {
      ...inner,
      happening: { ...inner.happening, attachment: { ...attachment, sizeBytes: attachment.sizeBytes + 9 } },
    },
  };
  it.relink(at);
  return it.close(close);
}

/** The whole journal of another dealer under this one's header, and the other way round. */
export function otherJournal(it, { sample }) {
  const other = openBackup(it.other(sample));
  it.backup.entries.splice(0, it.backup.entries.length, ...other.entries);
  it.backup.files.splice(0, it.backup.files.length, ...other.files);
  return it.close({ header: 'keep' });
}

/** Entries of another journal are put after these, whole chains of other devices. */
export function joinJournal(it, { sample, close }) {
  const other = openBackup(it.other(sample));
  const known = new Set(it.backup.entries.map(({ value }) => value.id));
  it.backup.entries.push(...other.entries.filter(({ value }) => !known.has(value.id)));
  it.backup.entries.sort((a, b) => (a.value.id < b.value.id ? -1 : 1));
  return it.close(close);
}
