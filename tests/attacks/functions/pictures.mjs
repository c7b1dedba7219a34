import { NotApplicable } from '../lib/case.mjs';
import { sha256 } from '../lib/hash.mjs';

const IMAGE = /<img (id="file-([0-9a-f]{64})") src="data:([^;]+);base64,([^"]+)"/g;

export const picturesOf = (it) =>
  [...it.pack.before.matchAll(IMAGE)].map(([all, id, hash, type, base64]) => ({ all, id, hash, type, base64 }));

function picture(it, n = 0) {
  const found = picturesOf(it).at(n);
  if (found === undefined) throw new NotApplicable('the page has no such picture');
  return found;
}

const fileRow = (it, hash) => it.rows.findIndex(({ value }) => value.file?.hash === hash);

const swapText = (it, from, to) => {
  it.pack.before = it.pack.before.replace(from, () => to);
};

/** What is done to the pictures of a page; each way is a sentence of the table. */
export function changePicture(it, { how, close }) {
  const one = picture(it, 0);
  const two = picture(it, 1);
  const row = fileRow(it, one.hash);
  switch (how) {
    case 'bytes of another':
      swapText(it, one.all, one.all.replace(one.base64, two.base64));
      break;
    case 'two change places':
      swapText(it, one.id, 'id="file-x"');
      swapText(it, two.id, one.id);
      swapText(it, 'id="file-x"', two.id);
      break;
    case 'one bit': {
      const bytes = Buffer.from(one.base64, 'base64');
      bytes[bytes.length - 20] ^= 1;
      swapText(it, one.base64, bytes.toString('base64'));
      break;
    }
    case 'gone from the page':
      swapText(it, /<figure><img id="file-[\s\S]*?<\/figure>\n/, '');
      break;
    case 'gone wholly':
      swapText(it, /<figure><img id="file-[\s\S]*?<\/figure>\n/, '');
      it.rows.splice(row, 1);
      break;
    case 'all gone wholly':
      it.pack.before = it.pack.before.replace(/<figure>[\s\S]*?<\/figure>\n/g, '');
      for (let i = it.rows.length - 1; i >= 0; i--) if (it.rows[i].value.file) it.rows.splice(i, 1);
      break;
    case 'line gone':
      it.rows.splice(row, 1);
      break;
    case 'replaced with its line': {
      const bytes = Buffer.concat([Buffer.from(one.base64, 'base64'), Buffer.from('x')]);
      const hash = sha256(bytes);
      it.pack.before = it.pack.before.replaceAll(one.hash, hash).replace(one.base64, bytes.toString('base64'));
      it.rows[row] = { value: { file: { ...it.rows[row].value.file, hash, sizeBytes: bytes.length } } };
      break;
    }
    case 'one more with its line': {
      const bytes = Buffer.from('GIF89a made up');
      const hash = sha256(bytes);
      const figure = `<figure><img id="file-${hash}" src="data:image/gif;base64,${bytes.toString('base64')}" alt="x"><figcaption>at the close</figcaption></figure>\n`;
      swapText(it, '</li>\n</ol>', `${figure}</li>\n</ol>`);
      it.rows.push({
        value: { file: { hash, name: 'at the close.gif', mediaType: 'image/gif', sizeBytes: bytes.length } },
      });
      break;
    }
    case 'one more, unnamed':
      swapText(
        it,
        '</li>\n</ol>',
        '<figure><img src="data:image/gif;base64,R0lGODlh" alt="x"><figcaption>page at the close.png, 1,888 bytes</figcaption></figure>\n</li>\n</ol>',
      );
      break;
    case 'false before the true, same id':
      swapText(
        it,
        `<img ${one.id}`,
        `<img ${one.id} src="data:image/gif;base64,R0lGODlh" alt="x"><img hidden ${one.id}`,
      );
      break;
    case 'false after the true, same id':
      swapText(it, '</ol>', `<img ${one.id} src="data:image/gif;base64,R0lGODlh" alt="x"></ol>`);
      break;
    case 'true one hidden, false one shown':
      swapText(
        it,
        `<img ${one.id}`,
        `<img src="data:image/gif;base64,R0lGODlh" alt="page at the proxy.png"><img hidden ${one.id}`,
      );
      break;
    case 'true one in a comment, false one shown':
      swapText(it, one.all, `<!-- ${one.all}> --><img id="other" src="data:image/gif;base64,R0lGODlh"`);
      break;
    case 'two sources':
      swapText(it, `<img ${one.id} src=`, `<img src="data:image/gif;base64,R0lGODlh" ${one.id} src=`);
      break;
    case 'other kind':
      swapText(it, one.all, one.all.replace('data:image/png', 'data:text/html'));
      break;
    case 'caption':
      it.pack.before = it.pack.before.replace(
        /<figcaption><bdi>[^<]*/,
        '<figcaption><bdi>page at the close, bid accepted.png',
      );
      break;
    default:
      throw new Error(`unknown way: ${how}`);
  }
  return it.close(close);
}

/** Another spelling of the same bytes, or nearly the same. */
export function respellPicture(it, { how, close }) {
  const one = picturesOf(it).find(({ base64 }) =>
    how === 'padding bits' || how === 'no padding' ? base64.endsWith('=') : true,
  );
  if (one === undefined) throw new NotApplicable('no picture has padding');
  swapText(it, one.base64, respelled(one.base64, how));
  return it.close(close);
}

export function respelled(base64, how) {
  switch (how) {
    case 'blanks':
      return base64.replace(/(.{76})/g, '$1\n ');
    case 'other alphabet':
      return base64.replaceAll('+', '-').replaceAll('/', '_');
    case 'no padding':
      return base64.replace(/=+$/, '');
    case 'more padding':
      return `${base64}====`;
    case 'padding bits': {
      const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
      const pad = base64.match(/=+$/)?.[0] ?? '';
      const body = base64.slice(0, base64.length - pad.length);
      return body.slice(0, -1) + alphabet[alphabet.indexOf(body.at(-1)) | 1] + pad;
    }
    case 'foreign characters':
      return `${base64.slice(0, 40)}*!${base64.slice(40)}`;
    case 'characters named':
      return [...base64].map((character, i) => (i % 50 === 0 ? `&#${character.charCodeAt(0)};` : character)).join('');
    default:
      throw new Error(`unknown way: ${how}`);
  }
}

/** A field of the line that names a file. */
export function setFileLine(it, { set, close }) {
  const row = it.rows.findIndex(({ value }) => value.file !== undefined);
  if (row < 0) throw new NotApplicable('there is no file');
  it.rows[row] = { value: { file: { ...it.rows[row].value.file, ...set } } };
  return it.close(close);
}

/** The name of a file in its entry, its line and its caption alike, with the chain made anew. */
export function fileIsNobodys(it, { close }) {
  const at = it.one({ kind: 'attachment-kept', form: 'entry' });
  const inner = it.get(at);
  const hash = it.random(32).toString('hex');
  const attachment = { ...inner.happening.attachment, hash };
  it.set(at, { ...inner, happening: { ...inner.happening, attachment } });
  it.relink(at);
  return it.close(close);
}
