import * as z from 'zod/mini';

/**
 * Facts that decide about money and that the setup would otherwise fill in, so that nobody would notice; and `row`, where
 * a row has more cells than its table has headings, so that each of its figures may stand under the wrong one.
 */
export const DECIDING_FIELDS = ['retail', 'recon', 'transport', 'increment', 'funding', 'row'] as const;

/**
 * What a table said of such a fact and could not be read. As long as it stands there is no max bid, because the figure
 * that would be taken in its place is not the one that somebody wrote. It goes when the fact is set or emptied; `row` goes
 * when somebody says that the figures are right.
 */
export const unreadCellSchema = z.strictObject({
  field: z.enum(DECIDING_FIELDS),
  /** The words of the cell. */
  text: z.string().check(z.maxLength(200)),
});
export type UnreadCell = z.infer<typeof unreadCellSchema>;

/** One for each field at most. */
export const unreadCellsSchema = z.array(unreadCellSchema).check(z.minLength(1), z.maxLength(DECIDING_FIELDS.length));

/** What is left unread after `touched` fields were set or emptied; undefined when nothing is. */
export function stillUnread(
  unread: readonly UnreadCell[] | undefined,
  touched: ReadonlySet<string>,
): UnreadCell[] | undefined {
  const left = (unread ?? []).filter(({ field }) => !touched.has(field));
  return left.length === 0 ? undefined : left;
}

/** What is left of `unread` when somebody has looked at the row. */
export const withoutRow = (unread: readonly UnreadCell[] | undefined): UnreadCell[] | undefined =>
  stillUnread(unread, new Set(['row']));

const WORDS: Readonly<Record<Exclude<UnreadCell['field'], 'row'>, string>> = {
  retail: 'retail',
  recon: 'recon',
  transport: 'transport',
  increment: 'the bid increment',
  funding: 'how it is paid',
};

/** "“about 800?” for recon could not be read. …" */
export const unreadSentence = ({ field, text }: UnreadCell): string =>
  field === 'row'
    ? `${text === '' ? 'This row has more cells than its table has headings' : `“${text}” stands beyond the last heading of its table`}, so a comma may have moved the cells of this row. There is no max bid until you have checked its figures.`
    : `“${text}” for ${WORDS[field]} could not be read. There is no max bid until you enter what it means.`;
