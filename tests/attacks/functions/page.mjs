import { NotApplicable } from '../lib/case.mjs';

/** Words of the readable page are replaced; the data stays as it is. */
export function changePage(it, { from, to, flags = '', close }) {
  const pattern = new RegExp(from, flags);
  if (!pattern.test(it.pack.before)) throw new NotApplicable(`the page has no ${from}`);
  it.pack.before = it.pack.before.replace(pattern, to);
  return it.close(close);
}

/** Something is put into the page before a place, or after it. */
export function putIntoPage(it, { at, what, where = 'before', close }) {
  const place = it.pack.before.indexOf(at);
  if (place < 0) throw new NotApplicable(`the page has no ${at}`);
  const cut = where === 'before' ? place : place + at.length;
  it.pack.before = it.pack.before.slice(0, cut) + what + it.pack.before.slice(cut);
  return it.close(close);
}

/** A second block of data, forged, beside the true one. */
export function secondData(it, { where, as = 'plain', close }) {
  const { start } = it.pack;
  const true_ = it.close();
  const data = true_.slice(true_.lastIndexOf(start), true_.lastIndexOf('</pre>'));
  const lie = data.replace(/12(?:,|)900/g, '9900');
  if (lie === data) throw new NotApplicable('the data holds no such amount');
  const block = `${as === 'other quotes' ? lie.replace(start, "<pre id='headroom-evidence'>") : lie}</pre>\n`;
  const whole = as === 'comment' ? `<!-- ${block} -->` : as === 'other case' ? block.replace('<pre', '<PRE') : block;
  if (where === 'before') {
    it.pack.before += whole;
    return it.close(close);
  }
  it.pack.after = it.pack.after.replace('</main>', `${whole}</main>`);
  return it.close(close);
}

/** What follows the data. */
export function afterData(it, { from = null, to, close }) {
  it.pack.after = from === null ? it.pack.after + to : it.pack.after.replace(from, to);
  return it.close(close);
}
