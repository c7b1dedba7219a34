/** A car's name may hold words that mean something else elsewhere. */
const CAR = /(?<![\p{L}\d])(?:(?:19|20)\d\d|['’]\d\d)(?: \p{Lu}[\p{L}\d'’-]*| \d{2,4}\b(?![,.]\d))+/gu;

/** The words right before a value: what was said before the last stop or separator is about something else. */
export function clauseBefore(text: string): string {
  const cut = Math.max(
    text.lastIndexOf(';'),
    text.lastIndexOf('|'),
    text.lastIndexOf('·'),
    text.lastIndexOf('•'),
    text.lastIndexOf('—'),
    text.lastIndexOf(' – '),
    text.lastIndexOf('\n'),
    lastStop(text),
  );
  const said = text
    .slice(cut + 1)
    .replace(CAR, ' ')
    .slice(-60);
  return said
    .replace(/^[\s,.:)(]+/, '')
    .replace(/\s+/g, ' ')
    .trim();
}

function lastStop(text: string): number {
  let last = -1;
  for (const stop of text.matchAll(/(?<=[\p{Ll}\d)%]{2})[.!?](?=\s)/gu)) last = stop.index;
  return last;
}
