import { gzipSync } from 'node:zlib';
import { NotApplicable } from '../lib/case.mjs';
import { innerOf } from '../lib/chain.mjs';

/** The whole file is written another way. */
export function wholeText(it, { how, size = 0 }) {
  const { text } = it;
  const bytes = Buffer.from(text, 'utf8');
  switch (how) {
    case 'byte order mark':
      return Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), bytes]);
    case 'carriage returns':
      return text.replaceAll('\n', '\r\n');
    case 'old line ends':
      return text.replaceAll('\n', '\r');
    case 'decomposed letters':
      return changed(text, text.normalize('NFD'));
    case 'composed letters':
      return changed(text, text.normalize('NFKC'));
    case 'UTF-16':
      return Buffer.from(`\ufeff${text}`, 'utf16le');
    case 'Latin-1 read as UTF-8':
      return changed(text, bytes.toString('latin1'));
    case 'bad bytes': {
      const at = bytes.indexOf(Buffer.from('buyer'));
      return Buffer.concat([bytes.subarray(0, at), Buffer.from([0xff, 0xc0, 0x80]), bytes.subarray(at)]);
    }
    case 'packed':
      return gzipSync(bytes);
    case 'empty':
      return Buffer.alloc(0);
    case 'one line feed':
      return '\n';
    case 'noise':
      return it.random(4096);
    case 'zero bytes':
      return Buffer.alloc(100_000);
    case 'twice':
      return text + text;
    case 'blanks before':
      return ` \n${text}`;
    case 'zero byte at the end':
      return `${text}\0`;
    case 'blank line at the end':
      return `${text}\n`;
    case 'words at the end':
      return `${text}and the sale agreed\n`;
    case 'no last line feed':
      return text.slice(0, -1);
    case 'endless line at the end':
      return Buffer.concat([bytes, Buffer.alloc(size, 0x61)]);
    case 'white space instead of blanks':
      return changed(text, text.replaceAll(' ', '\u00a0'));
    default:
      throw new Error(`unknown way: ${how}`);
  }
}

function changed(was, now) {
  if (was === now) throw new NotApplicable('the sample has no such letter');
  return now;
}

/** The file ends early, at each of several places; every one must be noticed. */
export function cutAt(it, { where, says }) {
  const { text } = it;
  const places = {
    'in the page': [0.1, 0.5, 0.9].map((share) => Math.floor(it.pack?.before.length * share)),
    'before the data': [it.pack?.before.length],
    'in a line': [2, 5].map((n) => midOf(it, n)),
    'between lines': [1, 4, 9].map((n) => startOf(it, n)),
    'before the last line': [text.lastIndexOf('\n', text.length - 2) + 1],
    'before the seal': [text.lastIndexOf('{&quot;seal')],
    'in the last line': [text.length - 20],
    'in what follows': [text.length - 4, text.length - 10],
    'after the head': [startOf(it, 0)],
    anywhere: Array.from({ length: 60 }, (_, i) => Math.floor((text.length * (i + 0.37)) / 60)),
    'after the first file’s line': [afterText(text, '{"file":', 1)],
    'in the bytes of a file': [text.lastIndexOf('{"bytes":"') + 1000, text.lastIndexOf('{"bytes":"') - 100_000],
    'between two files': [text.indexOf('{"file":', text.indexOf('{"file":') + 1), text.lastIndexOf('{"file":')],
    'between the parts of a file': [text.lastIndexOf('{"bytes":"')],
    'before the files': [text.indexOf('{"file":')],
  }[where];
  return places.map((at) => {
    if (!(at > 0 && at < text.length)) throw new NotApplicable(`there is no place ${where}`);
    return { label: `cut at ${at} of ${text.length}`, file: text.slice(0, at), says };
  });
}

function afterText(text, what) {
  const at = text.indexOf(what);
  return at < 0 ? -1 : text.indexOf('\n', at) + 1;
}

function startOf(it, n) {
  const at = it.text.indexOf(innerOf(it.rows[n], it.target).id);
  return it.text.lastIndexOf('\n', at) + 1;
}

const midOf = (it, n) => startOf(it, n) + 100;

/** A part of the file is taken out of its middle, at each of several places. */
export function holes(it, { size, count }) {
  const { text } = it;
  return Array.from({ length: count }, (_, i) => {
    const at = Math.floor(((text.length - size) * (i + 0.5)) / count);
    return { label: `${size} characters gone at ${at}`, file: text.slice(0, at) + text.slice(at + size) };
  });
}

/** One bit is turned, at each of several places of the bytes. */
export function bits(it, { count }) {
  const bytes = Buffer.from(it.text, 'utf8');
  return Array.from({ length: count }, (_, i) => {
    const at = Math.floor((bytes.length * (i + 0.5)) / count);
    const copy = Buffer.from(bytes);
    copy[at] ^= 1;
    return { label: `bit turned at ${at}`, file: copy };
  });
}
