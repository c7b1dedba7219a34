import type { Instant } from '../../domain/time/instant.ts';
import { asUndo, undoneIds } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import { happeningSchema } from '../../journal/happening.ts';
import type { PackLine } from '../../journal/pack/pack-format.ts';
import { readEntry } from '../../journal/read-entry.ts';
import { doneAt, sayHappening } from './say-happening.ts';

/** One line of the readable time line of a pack, made from its data alone. */
export interface PackMoment {
  readonly when: string;
  readonly who: string;
  readonly what: string;
  /** Says so where it was undone later, or its content is held back. */
  readonly remark?: string;
  /** The hash of the entry, so that the reader finds it among the data. */
  readonly hash: string;
  /** The hashes of files to be shown with it. */
  readonly files: readonly string[];
}

interface Telling {
  readonly lot: string;
  /** Says a moment in the words of a time zone. */
  readonly say: (at: Instant) => string;
}

/** What the data of a pack say of its lot, in order: the same from the journal and from a pack that came back. */
export function packMoments(lines: readonly PackLine[], telling: Telling): PackMoment[] {
  const known = lines.flatMap((line) => {
    const read = 'entry' in line ? readEntry(line.entry) : null;
    return read?.as === 'known' ? read.entry : [];
  });
  const undone: ReadonlySet<string> = undoneIds(known.flatMap((entry) => asUndo(entry) ?? []));
  const past = { undone, corrections: correctionsIn(known, undone) };
  return lines.flatMap((line) => momentOf(line, telling, past) ?? []);
}

/** What later entries made of earlier ones. */
interface Past {
  readonly undone: ReadonlySet<string>;
  readonly corrections: ReadonlySet<string>;
}

/** The ids of the results that correct an earlier one: every result after the first that was not undone. */
function correctionsIn(entries: readonly Entry[], undone: ReadonlySet<string>): ReadonlySet<string> {
  const found = new Set<string>();
  let stands = false;
  for (const { id, happening } of entries) {
    if (happening.kind !== 'result-noted') continue;
    if (stands) found.add(id);
    stands ||= !undone.has(id);
  }
  return found;
}

function momentOf(line: PackLine, { lot, say }: Telling, past: Past): PackMoment | null {
  if ('batch' in line) {
    const { at, author, hash, row, rows } = line.batch;
    const what = `It came in as row ${row.index} of ${rows}: ${sayRow(row.lot)}`;
    return { when: say(at), who: author, what, hash, files: [] };
  }
  if ('held' in line) {
    const { at, author, hash, subject } = line.held;
    if (subject !== `lot:${lot}`) return null;
    return {
      when: say(at),
      who: author,
      what: 'Something about this lot was recorded',
      remark: 'held back',
      hash,
      files: [],
    };
  }
  return 'entry' in line ? momentOfEntry(line.entry, say, past) : null;
}

function momentOfEntry(raw: unknown, say: Telling['say'], past: Past): PackMoment | null {
  const read = readEntry(raw);
  if (read.as === 'unreadable') return null;
  const { at, author, hash, id } = read.raw;
  const remark = past.undone.has(id) ? { remark: 'undone later' } : {};
  if (read.as === 'unknown')
    return { when: say(at), who: author, what: 'Something a newer version wrote', ...remark, hash, files: [] };
  const { happening } = read.entry;
  const correction = past.corrections.has(id) ? 'Correction: ' : '';
  const files = happening.kind === 'attachment-kept' ? [happening.attachment.hash] : [];
  return { when: say(at), who: author, what: correction + sayInFull(read.entry, say), ...remark, hash, files };
}

/** With the moment and the page, which a time line on the screen shows in lines of their own. */
function sayInFull({ happening, at }: Entry, say: Telling['say']): string {
  const done = doneAt(happening, at);
  const page = happening.kind === 'bid-noted' ? happening.bid.page : undefined;
  return [
    sayHappening(happening),
    done !== null && `Said to have happened ${say(done)}`,
    page !== undefined && `Page: ${page.title} (${page.url})`,
  ]
    .filter(Boolean)
    .join('. ');
}

/** The row of a batch by its facts, in the words in which a change to them is said. */
function sayRow({ facts }: Readonly<Record<string, unknown>>): string {
  const as = happeningSchema.safeParse({ kind: 'lot-changed', set: facts, clear: [], evidence: {} });
  return as.success ? sayHappening(as.data) : 'in a form that this version can’t read';
}
