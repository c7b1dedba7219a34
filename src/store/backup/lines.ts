/**
 * The lines of a text file, read piece by piece, without their line feeds. An empty last line (the usual end of a file)
 * is none. Bytes that are not UTF-8 come out as replacement characters, which no checksum of the original survives.
 */
export async function* linesOf(file: Blob): AsyncGenerator<string> {
  // A byte order mark is kept: it is among the bytes that the checksum is over.
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const reader = file.stream().getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    rest += decoder.decode(value, { stream: !done });
    const lines = rest.split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
    if (done) break;
  }
  if (rest !== '') yield rest;
}
