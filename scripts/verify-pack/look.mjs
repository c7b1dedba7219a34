/*! The whole look at a pack, and what it says. */
import { checkChains, checkLines } from './chains.mjs';
import { checkFiles } from './files.mjs';
import { canonical, sha256 } from './hashes.mjs';
import { checkLot } from './lot.mjs';
import { checkNoted, checkSigned, readNoted } from './noted.mjs';
import { hasOnly, headFault, isObject, kindOf } from './shapes.mjs';
import { checkStamps } from './stamp.mjs';
import { TAIL, takeApart } from './take-apart.mjs';
import { checkWitness } from './witness.mjs';

/**
 * What a look at a pack found: `refused` when it is none, else what its entries say, what is wrong, what it has to own up to,
 * and all the words that are printed.
 * @param notes the texts of fingerprints and keys that were noted elsewhere
 */
export function look(html, notes) {
  const noted = readNoted(notes);
  if (noted === null)
    return { refused: 'What was noted can\u2019t be read: give the device, the number and 64 letters and digits.' };
  const parts = takeApart(html);
  if (parts === null) return { refused: 'This file is not an evidence pack.' };
  const found = check(parts, noted);
  if (found.refused) return found;
  const told = [...new Set(found.told)];
  const verdict = found.wrong.length > 0 ? [`${found.wrong.length} wrong.`] : proved(found);
  const said = [
    ...found.wrong.map((sentence) => `WRONG: ${sentence}`),
    ...told.map((sentence) => `MIND: ${sentence}`),
    ...verdict,
  ];
  return { wrong: found.wrong, told, entries: entriesOf(found), said };
}

function check({ page, lines: all, texts, tail, inPage, places }, noted) {
  const head = all[0];
  const fault = headFault(head);
  if (fault !== null) return { refused: fault };
  const it = {
    head,
    own: `lot:${head.lot}`,
    wrong: [],
    told: [],
    links: [],
    files: [],
    kept: [],
    signed: [],
    stamped: [],
    witnessed: [],
    noted,
  };
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
  for (const part of [checkLines, checkChains, checkLot, checkNoted, checkSigned, checkStamps, checkWitness]) part(it);
  checkFiles(it, inPage, places);
  return it;
}

function entriesOf({ own, links }) {
  const lines = [];
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
    if (what !== null) lines.push(`${when}  ${author}  number ${sequence}: ${what}`);
  }
  return lines;
}

/** What a check that found nothing has shown, and what it can't show. */
function proved({ own, links, files, kept, signed, stamped, witnessed }) {
  const said = [];
  const ofLot = links.filter(({ kind, subject }) => kind === 'entry' || kind === 'batch' || subject === own);
  const held = ofLot.filter(({ kind }) => kind === 'held').length;
  said.push(
    `${ofLot.length - held} entries about this lot shown, ${held} held back; ${links.length - ofLot.length} lines of other matters, held back.`,
  );
  for (const device of new Set(links.map((link) => link.device))) {
    const numbers = links.filter((link) => link.device === device).map(({ sequence }) => sequence);
    said.push(
      `Device ${device}, number ${numbers[0]} to ${numbers.at(-1)}: every line has the fingerprint it states and follows the one before it.`,
    );
  }
  if (files.length > 0) said.push(`${files.length} files have the bytes that an entry named.`);
  for (const { device, sequence } of kept)
    said.push(
      `The noted fingerprint is there: the lines up to number ${sequence} of device ${device}, as far as none is on trust, are those of that time. It says nothing of later lines, nor of another device.`,
    );
  for (const { device, sequence, isKnown } of signed)
    said.push(
      `Number ${sequence} of device ${device} is signed, ${isKnown ? 'with the key you noted' : 'but with a key that only this file names, which proves nothing by itself'}.`,
    );
  for (const { device, sequence, at, authority, issuer } of stamped)
    said.push(
      `Number ${sequence} of device ${device} was there before ${new Date(at).toISOString()}, by the word of ${authority}, whose certificate names ${issuer} as its maker. Whether to trust that authority is for you to say.`,
    );
  said.push(...witnessed);
  said.push(
    'Whoever holds the whole journal can write it anew from any entry on, and sign it in his own browser: only a fingerprint or a key that left his hands before shows that.',
  );
  said.push(
    'This can\u2019t show what is not in the file, such as later lines or other devices, whether what was typed is true, whether the clock was right, or who sat there.',
  );
  return said;
}
