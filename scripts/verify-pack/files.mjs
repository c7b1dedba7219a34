/*! The files in the page. */
import { nameOf } from './chains.mjs';
import { sha256 } from './hashes.mjs';

export function checkFiles({ links, files, wrong, told }, inPage, places) {
  const entries = links.filter(({ kind }) => kind === 'entry');
  const byHash = new Map(inPage.map((one) => [one.hash, one]));
  const listed = new Set(files.map(({ hash }) => hash));
  if (byHash.size !== inPage.length || places !== inPage.length)
    wrong.push('The page holds a file twice, or one that is not put in as Headroom does.');
  if (listed.size !== files.length) wrong.push('A file is named twice in the data.');
  for (const file of files) {
    const kept = entries.some(({ happening: { attachment } }) =>
      ['hash', 'name', 'mediaType', 'sizeBytes'].every((part) => attachment?.[part] === file[part]),
    );
    const there = byHash.get(file.hash);
    if (!kept) wrong.push(`No entry in this pack lists the file ${file.name} as it stands here.`);
    else if (there === undefined) wrong.push(`The file ${file.name} is not in the page.`);
    else if (there.type !== file.mediaType && there.type !== 'application/octet-stream')
      wrong.push(`The file ${file.name} stands in the page as another kind of file.`);
    else if (!isFile(there.base64, file)) wrong.push(`The file ${file.name} has changed since it was saved.`);
  }
  for (const hash of byHash.keys())
    if (!listed.has(hash)) wrong.push('The page holds a file that the data does not list.');
  for (const entry of entries)
    for (const hash of namedIn(entry.happening))
      if (!listed.has(hash)) told.push(`${nameOf(entry)} names a file that is not in this pack: ${hash.slice(0, 12)}.`);
}

function isFile(base64, { hash, sizeBytes }) {
  const bytes = Buffer.from(base64, 'base64');
  return bytes.toString('base64') === base64 && bytes.length === sizeBytes && sha256(bytes) === hash;
}

/** The hashes of files that an entry speaks of. */
function namedIn({ attachment, bid, step }) {
  const files = Array.isArray(step?.files) ? step.files : [];
  return [attachment?.hash, bid?.picture, ...files].filter((hash) => typeof hash === 'string');
}
