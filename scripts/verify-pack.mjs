// Checks an evidence pack of Headroom by itself. Needs Node.js 18 or newer and nothing else.
//
//   node verify-pack.mjs PACK.html [--noted DEVICE:NUMBER:FINGERPRINT]...
//
// It prints what the entries in the pack say, then everything that is wrong; it ends with 0 when nothing is, with 1 when
// something is, with 2 when the file is no pack. Nothing in the pack is run. It was written apart from the program that makes the
// packs, from their description alone:
//
// The page holds, in <pre id="headroom-evidence">, a JSON value a line, with & < > " ' as entities: a head, the chain, the
// files, a seal. The canonical JSON of a value has no blanks and the members of each object sorted by name. The hash of an
// entry is SHA-256, in hexadecimal:
// - of the canonical JSON of all its members but "hash", when it has no "salt";
// - else of the same with "happening" and "salt" replaced by a member "content": the SHA-256 of the canonical JSON of
//   {"happening": ..., "salt": ...}. An entry that is held back ("held") shows only that content hash.
// Each entry states in "previous" the hash of the entry before it on its device, whose "sequence" is one less.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

const sha256 = (data) => createHash('sha256').update(data).digest('hex');

function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.keys(value).sort();
  return `{${members.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join(',')}}`;
}

function hashOf({ hash: _, ...entry }) {
  if (!('salt' in entry)) return sha256(canonical(entry));
  const { happening, salt, ...rest } = entry;
  return sha256(canonical({ ...rest, content: sha256(canonical({ happening, salt })) }));
}

function hashOfHeld({ hash: _, ...held }) {
  return sha256(canonical(held));
}

const ENTITIES = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };
const START = '<pre id="headroom-evidence">';
const TAIL = '</pre>\n</main>\n</body>\n</html>\n';

function takeApart(html) {
  const start = html.lastIndexOf(START);
  const end = html.indexOf('</pre>', start);
  if (start === -1 || end === -1) return null;
  const page = html.slice(0, start);
  const plain = (line) => line.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity]);
  const texts = html
    .slice(start + START.length, end)
    .split('\n')
    .filter((line) => line !== '')
    .map(plain);
  const inPage = new Map();
  for (const found of page.matchAll(/<(?:img|a) id="file-([0-9a-f]{64})" (?:src|href)="data:[^;"]*;base64,/g)) {
    const from = found.index + found[0].length;
    inPage.set(found[1], page.slice(from, page.indexOf('"', from)));
  }
  return { page, texts, tail: html.slice(end), inPage };
}

function check({ page, texts, tail, inPage }, noted) {
  const wrong = [];
  const lines = texts.map((text, i) => {
    try {
      return JSON.parse(text);
    } catch {
      wrong.push(`Line ${i + 1} of the data can't be read.`);
      return {};
    }
  });
  const head = lines[0] ?? {};
  if (head.format !== 'headroom-evidence' || head.version !== 1 || !Array.isArray(head.heads))
    return { wrong: ['The first line of the data is not a pack head that this script knows.'], entries: [] };
  const { seal } = lines.at(-1) ?? {};
  if (seal === undefined)
    wrong.push('The seal at the end of the data is missing: the file is cut short, or was changed.');
  else {
    const sealed = texts
      .slice(0, -1)
      .map((text) => `${text}\n`)
      .join('');
    if (sha256(sealed) !== seal.data) wrong.push('The data was changed after it was sealed.');
    if (sha256(page) !== seal.page) wrong.push('The readable part of the page was changed after it was sealed.');
  }
  if (tail !== TAIL) wrong.push('Something was added to the file after the data, or its end was changed.');
  const { entries, links } = checkChains(lines.slice(1, -1), head, wrong);
  checkNoted(noted, links, wrong);
  checkFiles(lines, entries, inPage, wrong);
  return { wrong, entries, links };
}

function checkChains(lines, head, wrong) {
  const entries = [];
  const links = [];
  const last = new Map();
  let lastId = '';
  for (const [i, line] of lines.entries()) {
    const link = line.entry ?? line.held ?? line.bare;
    if (link === undefined) {
      if (line.file === undefined) wrong.push(`Line ${i + 2} of the data is of no known kind.`);
      continue;
    }
    const name = `Entry number ${link.sequence} of device ${link.device}`;
    const again = line.entry ? hashOf(link) : line.held ? hashOfHeld(link) : link.hash;
    if (again !== link.hash) wrong.push(`${name} was changed after it was written.`);
    if (line.entry) {
      entries.push(link);
      const lots = link.happening?.lots;
      const about =
        link.subject === `lot:${head.lot}` || (Array.isArray(lots) && lots.some(({ id }) => id === head.lot));
      if (!about) wrong.push(`${name} is not about this lot.`);
    }
    if (!(link.id > lastId)) wrong.push(`${name} is out of order.`);
    lastId = link.id;
    const before = last.get(link.device);
    if (before !== undefined && link.sequence !== before.sequence + 1)
      wrong.push(`${name} follows number ${before.sequence}: something between is missing, or was inserted.`);
    else if (before !== undefined && link.previous !== before.hash)
      wrong.push(`${name} does not follow number ${before.sequence}: one of them was replaced.`);
    last.set(link.device, link);
    links.push(link);
  }
  for (const { device, sequence, hash } of head.heads) {
    const end = last.get(device);
    if (end?.sequence !== sequence || end?.hash !== hash)
      wrong.push(`The chain of device ${device} does not end with entry number ${sequence}, as the head says.`);
    last.delete(device);
  }
  for (const device of last.keys()) wrong.push(`Device ${device} is not named in the head.`);
  return { entries, links };
}

function checkNoted(noted, links, wrong) {
  for (const one of noted) {
    const [device, sequence, hash] = one.split(':');
    const there = links.find((link) => link.device === device && `${link.sequence}` === sequence);
    if (there === undefined)
      wrong.push(`The noted entry ${sequence} of ${device} is not in this pack: it was cut off, or is earlier.`);
    else if (there.hash !== hash?.toLowerCase())
      wrong.push(`Entry ${sequence} of ${device} is not the one you noted: the chain was rewritten.`);
  }
}

function checkFiles(lines, entries, inPage, wrong) {
  const kept = new Set(entries.map(({ happening }) => happening?.attachment?.hash));
  const named = lines.flatMap(({ file }) => file ?? []);
  for (const { hash, name, sizeBytes } of named) {
    const bytes = Buffer.from(inPage.get(hash) ?? '', 'base64');
    if (!kept.has(hash)) wrong.push(`No entry in this pack lists the file ${name}.`);
    if (!inPage.has(hash)) wrong.push(`The file ${name} is not in the page.`);
    else if (sha256(bytes) !== hash || bytes.length !== sizeBytes)
      wrong.push(`The file ${name} has changed since it was saved.`);
  }
  for (const hash of inPage.keys())
    if (!named.some((file) => file.hash === hash)) wrong.push('The page holds a file that the data does not list.');
}

/** Control and direction characters could make a terminal show something else. */
const printable = (text) =>
  text.replace(
    /[\p{Cc}\u200b-\u200f\u2028-\u202e\u2066-\u2069]/gu,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

function main([file, ...options]) {
  const noted = options.filter((option) => option !== '--noted');
  const parts = file === undefined ? null : takeApart(readFileSync(file, 'utf8'));
  if (parts === null) {
    console.error(
      file === undefined
        ? 'node verify-pack.mjs PACK.html [--noted DEVICE:NUMBER:FINGERPRINT]'
        : `${file} is not an evidence pack.`,
    );
    return 2;
  }
  const { wrong, entries, links = [] } = check(parts, noted);
  for (const { at, author, sequence, happening } of entries) {
    const when = Number.isFinite(at) ? new Date(at).toISOString() : 'at no time';
    console.log(printable(`${when}  ${author}  number ${sequence}: ${canonical(happening)}`));
  }
  const bare = parts.texts.filter((text) => text.startsWith('{"bare"')).length;
  console.log(
    `\n${links.length} entries in the chain, ${entries.length} shown whole, ${bare} taken on trust; ${parts.inPage.size} files.`,
  );
  for (const sentence of wrong) console.log(printable(`WRONG: ${sentence}`));
  console.log(wrong.length === 0 ? 'Nothing is wrong with this pack.' : `${wrong.length} wrong.`);
  if (noted.length === 0) console.log('No noted fingerprint was given, so a fully rewritten journal would not show.');
  return wrong.length === 0 ? 0 : 1;
}

process.exitCode = main(process.argv.slice(2));
