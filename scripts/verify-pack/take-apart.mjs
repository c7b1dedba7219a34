/*! The parts of a page, and the values of its lines. */

/** The value of a line, when the line is the very text that is written for it; undefined otherwise. */
function valueOfLine(text) {
  try {
    const value = JSON.parse(text);
    return hasOddParts(value) || JSON.stringify(value) !== text ? undefined : value;
  } catch {
    return undefined;
  }
}

function hasOddParts(value) {
  let level = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > 100) return true;
    const next = [];
    for (const one of level) {
      if (typeof one !== 'object' || one === null) continue;
      if (Object.hasOwn(one, '__proto__')) return true;
      for (const part of Object.values(one)) next.push(part);
    }
    level = next;
  }
  return false;
}

const ENTITIES = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };
const NAMES = Object.fromEntries(Object.entries(ENTITIES).map(([name, letter]) => [letter, name]));
const START = '<pre id="headroom-evidence">';
export const TAIL = '</pre>\n</main>\n</body>\n</html>\n';

/** The parts of a pack's page; null when it is none. */
export function takeApart(html) {
  const start = html.lastIndexOf(START);
  const end = html.indexOf('</pre>', start);
  if (start === -1 || end === -1 || html.match(/<pre\b[^>]*headroom-evidence/gi).length !== 1) return null;
  const page = html.slice(0, start);
  const texts = html.slice(start + START.length, end).split('\n');
  if (texts.at(-1) === '') texts.pop();
  else texts.push('');
  const inPage = [...page.matchAll(/<(?:img|a) id="file-([0-9a-f]{64})" (?:src|href)="data:([^;"]*);base64,/g)].map(
    (found) => {
      const from = found.index + found[0].length;
      return { hash: found[1], type: found[2], base64: page.slice(from, page.indexOf('"', from)) };
    },
  );
  const places = page.match(/\bid\s*=\s*["']?\s*file-[0-9a-f]{64}/gi)?.length ?? 0;
  return { page, lines: texts.map(plainOf), texts: texts.map(plainText), tail: html.slice(end), inPage, places };
}

const plainText = (line) => line.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity]);

function plainOf(line) {
  const text = plainText(line);
  return text.replace(/[&<>"']/g, (letter) => NAMES[letter]) === line ? valueOfLine(text) : undefined;
}
