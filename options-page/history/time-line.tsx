import type { Evidence } from '../../src/domain/lot/evidence.ts';
import { sayClock, sayDate, sayTime } from '../../src/domain/time/say-time.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { HistoryItem } from '../../src/store/journal/history.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { doneAt } from '../../src/views/history/say-happening.ts';
import { sayItem } from '../../src/views/history/say-item.ts';
import { correctionsIn } from './corrections.ts';
import { KeptFile } from './kept-file.tsx';

/** Everything in order, the earliest first; what was undone stays in its place, crossed out. */
export function TimeLine({ history }: { history: readonly HistoryItem[] }) {
  const corrections = correctionsIn(history);
  const words = new Map(
    history.map((item) => [
      item.id as string,
      `${corrections.has(item.id) ? 'Correction: ' : ''}${sayItem(item.read)}`,
    ]),
  );
  return (
    <section class="stack" aria-label="What happened, in order">
      <h2>What happened, in order</h2>
      <ol class="life-line">
        {history.map((item) => (
          <Moment key={item.id} item={item} words={words} />
        ))}
      </ol>
    </section>
  );
}

function Moment({ item, words }: { item: HistoryItem; words: ReadonlyMap<string, string> }) {
  const { setup } = useWorkspace();
  const { read, counts } = item;
  if (read.as === 'unreadable')
    return (
      <li class="time-moment">
        <span />
        <p class="note warning">{words.get(item.id)}</p>
      </li>
    );
  const { zone } = setup.store;
  const { at, author, sequence, hash } = read.raw;
  const entry = read.as === 'known' ? read.entry : null;
  return (
    <li class={counts ? 'time-moment' : 'time-moment taken-back'}>
      <span class="small">
        <strong>{sayClock(at, zone)}</strong>
        <br />
        <span class="quiet">{sayDate(dateIn(zone, at))}</span>
      </span>
      <div>
        <p>
          {counts ? words.get(item.id) : <del>{words.get(item.id)}</del>}
          {!counts && <strong> undone</strong>}
        </p>
        {entry !== null && <Done entry={entry} />}
        {entry !== null && <More entry={entry} words={words} />}
        <p class="quiet small">
          {author}, entry {sequence} <code title={hash}>{hash.slice(0, 8)}</code>
        </p>
      </div>
    </li>
  );
}

/** What was read where the user had pointed, in the page's own words. */
function Pointed({ evidence }: { evidence: Readonly<Record<string, Evidence>> }) {
  const texts = Object.values(evidence).flatMap(({ from, text }) => (from === 'pointed' ? [text] : []));
  return texts.length === 0 ? null : (
    <p class="small">
      From the place you pointed at: <q>{texts.join(' · ')}</q>
    </p>
  );
}

/** The moment that the writer states, where it is not the one in which he wrote. */
function Done({ entry }: { entry: Entry }) {
  const { setup } = useWorkspace();
  const done = doneAt(entry.happening, entry.at);
  return done === null ? null : (
    <p class="small">Said to have happened {sayTime(done, setup.store.zone)}, entered later</p>
  );
}

/** What does not fit the sentence: the page on which it was done, its picture, what an undo took back. */
function More({ entry: { happening }, words }: { entry: Entry; words: ReadonlyMap<string, string> }) {
  switch (happening.kind) {
    case 'attachment-kept':
      return <KeptFile file={happening.attachment} />;
    case 'bid-noted': {
      const { page } = happening.bid;
      // The address is text, not a link: evidence is looked at, not followed by a slip.
      return page === undefined ? null : (
        <p class="small">
          On the page <bdi>{page.title}</bdi> <code>{page.url}</code>
        </p>
      );
    }
    case 'lots-added':
      return happening.lots.length === 1 ? <Pointed evidence={happening.lots[0]?.evidence ?? {}} /> : null;
    case 'lot-changed':
      return <Pointed evidence={happening.evidence} />;
    case 'undone': {
      const undone = words.get(happening.entry);
      return undone === undefined ? null : <p class="small">That was: {undone}</p>;
    }
    default:
      return null;
  }
}
