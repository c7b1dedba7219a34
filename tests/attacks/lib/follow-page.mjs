/**
 * The readable page after the data was changed, as a careful forger leaves it: the short hash of each entry fits, the moment of
 * an entry that went is gone, that of one that is held back says so. With `tools.pageOf` the adapter makes the page from the
 * data instead, as the program would.
 * @param before the values of the lines, as they were
 * @param page `edits`: pairs of a pattern and what stands in its place; `moment`: the same for the moment of an entry that was
 * put in, which is copied from the one before it
 */
export function followPage(it, before, { edits = [], moment: changes = [] }) {
  if (it.tools.pageOf) return it.tools.pageOf(it);
  let text = it.pack.before;
  const inner = (value) => value?.entry ?? value?.held ?? value?.batch ?? value?.bare;
  const now = new Map();
  for (const { value } of it.rows) if (inner(value)?.id) now.set(inner(value).id, value);
  for (const was of before) {
    const old = inner(was);
    if (!old) continue;
    const is = now.get(old.id);
    const short = `<code>${old.hash.slice(0, 12)}</code>`;
    const moment = new RegExp(`<li><p>(?:(?!</li>)[\\s\\S])*?${short}[\\s\\S]*?</li>\\n`);
    if (is === undefined || ('bare' in is && !('bare' in was))) text = text.replace(moment, '');
    else if ('held' in is && 'entry' in was)
      text = text.replace(moment, (all) =>
        all
          .replace(/<figure>[\s\S]*?<\/figure>\n/g, '')
          .replace(
            /<\/time> <bdi>[\s\S]*?<\/bdi>/,
            '</time> <bdi>Something about this lot was recorded</bdi> <strong>(held back)</strong>',
          ),
      );
    if (is !== undefined) text = text.replace(short, `<code>${inner(is).hash.slice(0, 12)}</code>`);
  }
  const known = new Set(before.map((value) => inner(value)?.id));
  for (const [at, { value }] of it.rows.entries()) {
    if (!('entry' in (value ?? {})) || known.has(value.entry.id) || at === 0) continue;
    const short = (row) => `<code>${inner(row.value)?.hash.slice(0, 12)}</code>`;
    const twin = new RegExp(`<li><p>(?:(?!</li>)[\\s\\S])*?${short(it.rows[at - 1])}[\\s\\S]*?</li>\\n`);
    text = text.replace(twin, (all) => {
      const copy = all.replace(/<figure>[\s\S]*?<\/figure>\n/g, '').replace(short(it.rows[at - 1]), short(it.rows[at]));
      return all + changes.reduce((words, [from, to]) => words.replace(new RegExp(from), to), copy);
    });
  }
  for (const [from, to] of edits) text = text.replace(new RegExp(from, 'g'), to);
  return text;
}
