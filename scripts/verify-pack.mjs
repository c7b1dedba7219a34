/*!
 * Checks an evidence pack of Headroom by itself. Needs Node.js 18 or newer and nothing else.
 *
 *   node verify-pack.mjs PACK.html [--noted DEVICE:NUMBER:FINGERPRINT | DEVICE:key:KEY]...
 *
 * It prints what the entries in the pack say, then what the check shows and what it can't show, or everything that is wrong. It
 * ends with 0 when nothing was found, with 1 when something was, with 2 when the file is no pack or a note can't be read. Nothing
 * in the pack is run. It was written apart from the program that makes the packs, from their description alone:
 *
 * The page holds, in <pre id="headroom-evidence">, a JSON value a line, with & < > " ' as entities: a head, the chain, the
 * files, a seal; each line is the text that JSON.stringify writes of its value. The canonical JSON of a value (RFC 8785) has no
 * blanks and the members of each object sorted by name. The hash of an entry is SHA-256, in hexadecimal:
 * - of the canonical JSON of all its members but "hash", when it has no "salt";
 * - else of the same with "happening" and "salt" replaced by a member "content": the SHA-256 of the canonical JSON of
 *   {"happening": ..., "salt": ...}. An entry that is held back ("held") shows only that content hash.
 * - With a member "rows" the content hash is the root of a hash tree (RFC 6962, section 2.1) whose leaf number n is the canonical
 *   JSON of {"lot": ..., "salt": ...} for row n, and whose leaf 0 is that of the rest. A "batch" line shows one row and its path.
 * Each entry states in "previous" the hash of the entry before it on its device, whose "sequence" is one less. A head may be
 * signed: Ed25519 (RFC 8032) over the text "Headroom head DEVICE:NUMBER:FINGERPRINT".
 */
import { readFileSync } from 'node:fs';
import { checkChains, checkLines } from './verify-pack/chains.mjs';
import { checkFiles } from './verify-pack/files.mjs';
import { canonical, sha256 } from './verify-pack/hashes.mjs';
import { checkLot } from './verify-pack/lot.mjs';
import { checkNoted, checkSigned, readNoted } from './verify-pack/noted.mjs';
import { hasOnly, headFault, isObject, kindOf } from './verify-pack/shapes.mjs';
import { TAIL, takeApart } from './verify-pack/take-apart.mjs';

function check({ page, lines: all, texts, tail, inPage, places }, noted) {
  const head = all[0];
  const fault = headFault(head);
  if (fault !== null) return { refused: fault };
  const it = { head, own: `lot:${head.lot}`, wrong: [], told: [], links: [], files: [], kept: [], signed: [], noted };
  const seal = all.at(-1);
  if (!isObject(seal) || !hasOnly(seal, ['seal']) || !isObject(seal.seal) || !hasOnly(seal.seal, ['page', 'data']))
    it.wrong.push('The seal at the end of the data is missing: the file is cut short, or was changed.');
  else {
    const sealed = texts
      .slice(0, -1)
      .map((text) => `${text}\n`)
      .join('');
    if (sha256(sealed) !== seal.seal.data) it.wrong.push('The data was changed after it was sealed.');
    if (sha256(page) !== seal.seal.page)
      it.wrong.push('The readable part of the page was changed after it was sealed.');
  }
  if (tail !== TAIL) it.wrong.push('Something was added to the file after the data, or its end was changed.');
  for (const [i, line] of all.slice(1, -1).entries()) {
    const kind = kindOf(line);
    if (kind === null) it.wrong.push(`Line ${i + 2} of the data can't be read, or is of no known kind.`);
    else if (kind === 'file') it.files.push(line.file);
    else if (it.files.length > 0) it.wrong.push(`Line ${i + 2} of the data stands behind the files.`);
    else it.links.push({ kind, ...line[kind] });
  }
  for (const part of [checkLines, checkChains, checkLot, checkNoted, checkSigned]) part(it);
  checkFiles(it, inPage, places);
  return it;
}

/** Control and direction characters could make a terminal show something else. */
const printable = (text) =>
  text.replace(
    /[\p{Cc}\u200b-\u200f\u2028-\u202e\u2066-\u2069]/gu,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

function printEntries({ own, links }) {
  for (const { kind, at, author, sequence, subject, happening, row, rows } of links) {
    const what =
      kind === 'entry'
        ? canonical(happening)
        : kind === 'batch'
          ? `row ${row.index} of ${rows}: ${canonical(row.lot)}`
          : kind === 'held' && subject === own
            ? 'held back'
            : null;
    const when = new Date(at).getTime() === at ? new Date(at).toISOString() : 'at no time';
    if (what !== null) console.log(printable(`${when}  ${author}  number ${sequence}: ${what}`));
  }
}

/** What a check that found nothing has shown, and what it can't show. */
function printProved({ own, links, files, kept, signed }) {
  const ofLot = links.filter(({ kind, subject }) => kind === 'entry' || kind === 'batch' || subject === own);
  const held = ofLot.filter(({ kind }) => kind === 'held').length;
  console.log(
    `${ofLot.length - held} entries about this lot shown, ${held} held back; ${links.length - ofLot.length} lines of other matters, held back.`,
  );
  for (const device of new Set(links.map((link) => link.device))) {
    const numbers = links.filter((link) => link.device === device).map(({ sequence }) => sequence);
    console.log(
      `Device ${device}, number ${numbers[0]} to ${numbers.at(-1)}: every line has the fingerprint it states and follows the one before it.`,
    );
  }
  if (files.length > 0) console.log(`${files.length} files have the bytes that an entry named.`);
  for (const { device, sequence } of kept)
    console.log(
      `The noted fingerprint is there: the lines up to number ${sequence} of device ${device}, as far as none is on trust, are those of that time. It says nothing of later lines, nor of another device.`,
    );
  for (const { device, sequence, isKnown } of signed)
    console.log(
      `Number ${sequence} of device ${device} is signed, ${isKnown ? 'with the key you noted' : 'but with a key that only this file names, which proves nothing by itself'}.`,
    );
  console.log(
    'Whoever holds the whole journal can write it anew from any entry on, and sign it in his own browser: only a fingerprint or a key that left his hands before shows that.',
  );
  console.log(
    'This can\u2019t show what is not in the file, such as later lines or other devices, whether what was typed is true, whether the clock was right, or who sat there.',
  );
}

function main([file, ...options]) {
  const noted = readNoted(options.filter((option) => option !== '--noted'));
  const parts = file === undefined ? null : takeApart(readFileSync(file, 'utf8'));
  const found = parts === null || noted === null ? { refused: `${file} is no evidence pack.` } : check(parts, noted);
  if (file === undefined || noted === null || found.refused) {
    if (file === undefined) console.error('node verify-pack.mjs PACK.html [--noted DEVICE:NUMBER:FINGERPRINT]');
    else if (noted === null)
      console.error('What was noted can\u2019t be read: give the device, the number and 64 letters and digits.');
    else console.error(found.refused);
    return 2;
  }
  printEntries(found);
  console.log('');
  for (const sentence of found.wrong) console.log(printable(`WRONG: ${sentence}`));
  for (const sentence of new Set(found.told)) console.log(printable(`MIND: ${sentence}`));
  if (found.wrong.length > 0) console.log(`${found.wrong.length} wrong.`);
  else printProved(found);
  return found.wrong.length === 0 ? 0 : 1;
}

process.exitCode = main(process.argv.slice(2));
