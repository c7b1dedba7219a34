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
import { look } from './verify-pack/look.mjs';

/** Control and direction characters could make a terminal show something else. */
const printable = (text) =>
  text.replace(
    /[\p{Cc}\u200b-\u200f\u2028-\u202e\u2066-\u2069]/gu,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

function main([file, ...options]) {
  if (file === undefined) {
    console.error('node verify-pack.mjs PACK.html [--noted DEVICE:NUMBER:FINGERPRINT]');
    return 2;
  }
  const notes = options.filter((option) => option !== '--noted');
  const found = look(readFileSync(file, 'utf8'), notes);
  if (found.refused) {
    console.error(`${file}: ${found.refused}`);
    return 2;
  }
  for (const line of [...found.entries, '', ...found.said]) console.log(printable(line));
  return found.wrong.length === 0 ? 0 : 1;
}

process.exitCode = main(process.argv.slice(2));
