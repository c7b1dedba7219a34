import type { Attachment } from '../../domain/sale/attachment.ts';
import { filesNamedIn } from '../../folds/files-named-in.ts';
import type { Entry } from '../../journal/entry.ts';
import { countWords } from '../../views/words/count-words.ts';

type Stated = Pick<Attachment, 'name' | 'mediaType' | 'sizeBytes'>;

/** The files that entries of a backup name, and what they state of them. */
export class NamedFiles {
  readonly hashes = new Set<string>();
  private readonly stated = new Map<string, Stated[]>();

  add(entry: Entry): void {
    for (const { hash } of filesNamedIn(entry)) this.hashes.add(hash);
    if (entry.happening.kind !== 'attachment-kept') return;
    const { attachment } = entry.happening;
    this.stated.set(attachment.hash, [...(this.stated.get(attachment.hash) ?? []), attachment]);
  }

  /** A sentence for each way in which the files that came differ from those that are named. */
  heldAgainst(files: ReadonlyMap<string, Blob>): string[] {
    const missing = [...this.hashes].filter((hash) => !files.has(hash));
    const extra = [...files.keys()].filter((hash) => !this.hashes.has(hash));
    const one = missing.length === 1;
    return [
      ...(missing.length === 0
        ? []
        : [
            `${countWords(missing.length, 'attached file that an entry names is', 'attached files that entries name are')} not in it: ${this.namesOf(missing)}. ${one ? 'It was' : 'They were'} damaged when the backup was saved, or taken out since. What is already here stays.`,
          ]),
      ...(extra.length === 0
        ? []
        : [`${countWords(extra.length, 'attached file is', 'attached files are')} in it that no entry names.`]),
      ...[...files].flatMap(([hash, { type, size }]) => this.differing(hash, type, size)),
    ];
  }

  private namesOf(hashes: readonly string[]): string {
    const names = hashes.map((hash) => this.stated.get(hash)?.[0]?.name ?? hash.slice(0, 12));
    return names.length > 5 ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more` : names.join(', ');
  }

  private differing(hash: string, type: string, size: number): string[] {
    const stated = this.stated.get(hash) ?? [];
    const [first] = stated;
    if (first === undefined) return [];
    return [
      // A browser writes the kind of a file in small letters, whatever it was given.
      ...(stated.some(({ mediaType }) => mediaType.toLowerCase() === type.toLowerCase())
        ? []
        : [`The attached file ${first.name} is of another kind in it than its entry says.`]),
      ...(stated.some(({ sizeBytes }) => sizeBytes === size)
        ? []
        : [`The attached file ${first.name} has another size than its entry says.`]),
    ];
  }
}
