import { sealedHash } from '../../../src/journal/entry-hash.ts';
import { hashSchema } from '../../../src/journal/ids.ts';
import { openPack } from '../../../src/journal/pack/open-pack.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { value } from '../../store/open-test-store.ts';
import { type Line, linesIn, PICTURES, rehashed, resealed } from './sample-pack.ts';

/** A way to break a pack, sealed anew as a careful forger would, and what must be said of it. */
export interface Break {
  readonly how: string;
  readonly broken: string;
  readonly said: RegExp;
}

const OTHER = Buffer.from('a forged picture!');

export function everyBreak(pack: string): Break[] {
  const lines = linesIn(pack);
  const { page } = value(openPack(pack));
  const places = lines.flatMap((line, i) => (line.entry === undefined ? [] : [i]));
  const place = at(places, 1);
  const entry = at(lines, place).entry;
  if (entry === undefined) throw new Error('no entry');
  const heldAt = lines.findIndex((line, i) => i > place && line.held !== undefined);
  const held = at(lines, heldAt).held;
  if (held === undefined) throw new Error('nothing held');
  const with_ = (i: number, line: object): object[] => lines.map((one, j) => (i === j ? line : one));
  const without = (i: number): object[] => lines.filter((_, j) => i !== j);
  const reseal = (all: readonly object[], text?: string): string => resealed(pack, all, text);
  const inserted = rehashed({ ...entry, id: `${entry.id.slice(0, -1)}Z` as typeof entry.id, author: 'someone else' });
  const cut = lines.filter((line, i) => i < lines.length && !(line.held !== undefined && i > heldAt - 1));
  return [
    {
      how: 'an amount is changed',
      broken: reseal(with_(place, { entry: { ...entry, author: 'manager' } })),
      said: /was changed after/,
    },
    {
      how: 'an entry is changed and given a fitting hash',
      broken: reseal(with_(place, { entry: rehashed({ ...entry, at: (entry.at + 60_000) as typeof entry.at }) })),
      said: /does not follow number/,
    },
    { how: 'an entry is taken out', broken: reseal(without(place)), said: /something between is missing/ },
    { how: 'an entry that was held back is taken out', broken: reseal(without(heldAt)), said: /missing|does not end/ },
    {
      how: 'an entry is put in',
      broken: reseal([...lines.slice(0, place + 1), { entry: inserted }, ...lines.slice(place + 1)]),
      said: /was inserted/,
    },
    {
      how: 'two entries change places',
      broken: reseal(with_(place, at(lines, place + 1)).map((one, i) => (i === place + 1 ? at(lines, place) : one))),
      said: /out of order/,
    },
    {
      how: 'the time of an entry that was held back is changed',
      broken: reseal(with_(heldAt, { held: { ...held, at: Number(held.at) + 1 } })),
      said: /was changed after/,
    },
    {
      how: 'an entry that was held back is replaced with a fitting hash',
      broken: reseal(with_(heldAt, { held: reheld({ ...held, content: '0'.repeat(64) }) })),
      said: /does not follow number|does not end/,
    },
    { how: 'the end of the chain is cut off', broken: reseal(cut), said: /does not end with|missing/ },
    {
      how: 'an entry is passed off as another device’s',
      broken: reseal(with_(place, { entry: rehashed({ ...entry, device: '0000000000' as typeof entry.device }) })),
      said: /not named in the first line|not named in the head/,
    },
    {
      how: 'a picture is replaced',
      broken: reseal(lines, page.replace(PICTURES[0].toString('base64'), OTHER.toString('base64'))),
      said: /has changed since it was saved/,
    },
    {
      how: 'a picture is replaced and named by its new hash',
      broken: reseal(renamed(lines, page).lines, renamed(lines, page).page),
      said: /No entry in this pack lists/,
    },
    {
      how: 'a picture is taken out',
      broken: reseal(lines, page.replace(/<img id="file-[^>]*>/, '')),
      said: /is not in the page/,
    },
    {
      how: 'the readable part is changed',
      broken: pack.replace('Made by the buyer', 'Made by the seller'),
      said: /readable part of the page was changed/,
    },
    {
      how: 'something is added at the end',
      broken: `${pack}<p>and we agreed on $1</p>`,
      said: /added to the file after the data/,
    },
    {
      how: 'the file is cut off in the data',
      broken: `${pack.slice(0, pack.lastIndexOf('&quot;seal'))}</pre>\n</main>\n</body>\n</html>\n`,
      said: /seal|can[’']t be read/,
    },
  ];
}

function reheld(held: NonNullable<Line['held']>): object {
  const content = hashSchema.parse(held.content);
  return { ...held, hash: sealedHash(held, content) };
}

function renamed(lines: readonly Line[], page: string): { lines: object[]; page: string } {
  const [first] = lines.flatMap(({ file }) => file ?? []);
  const hash = 'd'.repeat(64);
  return {
    lines: lines.map((line) => (line.file?.hash === first?.hash ? { file: { ...line.file, hash } } : line)),
    page: page.replace(`file-${first?.hash}`, `file-${hash}`),
  };
}
