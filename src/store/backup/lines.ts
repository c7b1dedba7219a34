/**
 * The lines of a text file, read piece by piece, without their line feeds. An empty last line (the usual end of a file)
 * is none. A line longer than any that a backup has ends the reading: what is there of it is the last line. Bytes that are
 * not UTF-8 come out as replacement characters, which no checksum of the original survives.
 */
export async function* linesOf(file: Blob): AsyncGenerator<string> {
  // A byte order mark is kept: it is among the bytes that the checksum is over.
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const reader = file.stream().getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    // Only what is new is searched, or a file of one endless line would be searched from its beginning each time.
    const [first = '', ...more] = decoder.decode(value, { stream: !done }).split('\n');
    rest += first;
    const last = more.pop();
    if (last !== undefined) {
      yield rest;
      yield* more;
      rest = last;
    }
    if (done || rest.length > LONGEST_LINE) break;
  }
  if (rest !== '') yield rest;
}

/** In characters: many times what hundreds of lots with the longest of notes take. */
const LONGEST_LINE = 64_000_000;
