/*! What the lines say of the lot. */
import { nameOf, short } from './chains.mjs';
import { oddity } from './names.mjs';

export function checkLot({ head, own, links, wrong, told }) {
  const entries = links.filter(({ kind }) => kind === 'entry');
  const brings = ({ kind, happening, row }) =>
    kind === 'batch'
      ? row.lot.id === head.lot
      : happening?.kind === 'lots-added' &&
        Array.isArray(happening.lots) &&
        happening.lots.some((lot) => lot?.id === head.lot);
  for (const link of links)
    if ((link.kind === 'entry' && link.subject !== own && !brings(link)) || (link.kind === 'batch' && !brings(link)))
      wrong.push(`${nameOf(link)} is not about this lot.`);
  const held = links.filter(({ kind, subject }) => kind === 'held' && subject === own);
  if (held.length > 0 && head.shows === 'everything')
    wrong.push(`The pack is said to show everything about this lot, but holds back ${held.map(short).join(', ')}.`);
  else if (held.length > 0) told.push(`Of this lot held back: ${held.map(short).join(', ')}.`);
  const births = links.filter(brings).length;
  if (births === 0) told.push('The entry that brought this lot in is not shown.');
  if (births > 1) wrong.push(`This lot is brought in ${births} times.`);
  if (!entries.some(({ happening }) => happening.kind === 'result-noted')) told.push('No result of this lot is shown.');
  const subjects = new Map(links.map(({ id, subject }) => [id, subject]));
  for (const entry of entries) {
    const named = entry.happening.kind === 'undone' ? entry.happening.entry : entry.happening.dispute;
    if (typeof named !== 'string') continue;
    const subject = subjects.get(named);
    if (!subjects.has(named)) told.push(`${nameOf(entry)} speaks of an entry that is not in this file.`);
    else if (entry.subject === own && subject !== undefined && subject !== own)
      told.push(`${nameOf(entry)} speaks of an entry that is filed under something else than this lot.`);
  }
  const late = links.filter(({ at }) => at > head.madeAt + 60 * 60 * 1000);
  if (late.length > 0) told.push(`Written after the pack was made, by their own times: ${late.map(short).join(', ')}.`);
  for (const entry of entries) {
    const odd = oddity(entry.happening);
    if (odd !== null) told.push(`${nameOf(entry)} ${odd}.`);
  }
}
