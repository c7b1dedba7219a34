/** What stands in place of a screen until its data are read. It has the heading already, so that nobody lands nowhere. */
export function StillReading({ title, words }: { title: string; words: string }) {
  return (
    <section class="stack" aria-busy="true">
      <h1>{title}</h1>
      <p role="status">{words}</p>
    </section>
  );
}
