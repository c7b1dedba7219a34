import { attributeOf, type PageElement } from '../dom/page-tree.ts';
import { labelRoles } from '../roles/label-roles.ts';
import type { TableCell, TableModel, TableRow } from '../text/table-model.ts';
import { isOneLot, type LotCard, lotKey } from './lot-card.ts';
import type { LotMark } from './lot-marks.ts';

type Within = ReadonlyMap<PageElement, readonly LotMark[]>;

/** The lots of tables that have one in each row, or one in each column beside its labels. Empty where there are not several. */
export function lotsInTables(tables: readonly TableModel[], within: Within): readonly LotCard[] {
  const cards = tables.flatMap((table) => {
    const rows = lotsInRows(table, within);
    return rows.length > 0 ? rows : lotsInColumns(table, within);
  });
  return new Set(cards.map((card) => lotKey(card.marks) || card)).size >= 2 ? cards : [];
}

function lotsInRows({ rows }: TableModel, within: Within): readonly LotCard[] {
  const cards: LotCard[] = [];
  let head: TableRow | null = null;
  let last: { roots: PageElement[] } | null = null;
  const vinColumn = columnOfVins(rows, within);
  /** Rows below that a cell of the lot's first row reaches down into. */
  let held = 0;
  /** A row of one text with a car's name, which is over the facts of that car. */
  let over: TableRow | null = null;
  for (const row of rows) {
    if (row.kind === 'head') {
      head = row;
      last = null;
      continue;
    }
    if (isNameAlone(row, within)) {
      over = row;
      last = null;
      continue;
    }
    const marks = ownMarks(row, vinColumn, within);
    const several = !isOneLot(marks) && marks.length > 0;
    if (several) return [];
    const full = row.cells.filter((cell) => cell.text !== '').length;
    if (held > 0 && last !== null && marks.length === 0) {
      last.roots.push(row.element);
      held--;
      continue;
    }
    held = Math.max(0, ...row.cells.map((cell) => rowsHeld(cell))) - 1;
    const isLot = marks.length > 0 || (head !== null && namesACar(row, head));
    if (isLot && (full >= 3 || (full === 2 && held > 0))) {
      const above: TableRow | null = marks.some((mark) => mark.kind === 'name') ? null : over;
      const card = {
        roots: above === null ? [row.element] : [above.element, row.element],
        marks: above === null ? marks : [...(within.get(above.element) ?? []), ...marks],
      };
      cards.push(card);
      last = card;
      over = null;
    } else if (last !== null && isAnnounced(row) && marks.length === 0) {
      // What is announced under a row belongs to it.
      last.roots.push(row.element);
    } else last = null;
  }
  if (head === null && !areAlike(cards)) return [];
  if (cards.length >= 2) return cards;
  // One row is a lot by itself; one among rows of facts is a fact.
  const full = rows.filter(({ kind, cells }) => kind === 'data' && cells.filter(({ text }) => text !== '').length >= 2);
  return cards.length === 1 && head === null && full.length === 1 ? cards : [];
}

function isNameAlone({ element, cells }: TableRow, within: Within): boolean {
  const full = cells.filter(({ text }) => text !== '');
  const marks = within.get(element) ?? [];
  return full.length === 1 && marks.length > 0 && marks.every((mark) => mark.kind === 'name' && !mark.prose);
}

/** Where a table's rows have their VINs; undefined where no column has one in most rows. */
function columnOfVins(rows: readonly TableRow[], within: Within): number | undefined {
  const counts = new Map<number, number>();
  for (const { kind, cells } of rows) {
    for (const { at, element } of kind === 'data' ? cells : []) {
      if (vinsIn(within.get(element)).size === 1) counts.set(at, (counts.get(at) ?? 0) + 1);
    }
  }
  const [best] = [...counts].sort(([, a], [, b]) => b - a);
  const full = rows.filter(({ kind, cells }) => kind === 'data' && cells.length >= 3).length;
  return best !== undefined && best[1] >= Math.max(2, full * 0.6) ? best[0] : undefined;
}

const vinsIn = (marks: readonly LotMark[] = []): ReadonlySet<string> =>
  new Set(marks.flatMap((mark) => (mark.kind === 'vin' ? [mark.key] : [])));

/** The marks of a row. What a remark in it says of other cars is not among them where the rows' VINs have a column. */
function ownMarks({ element, cells }: TableRow, vinColumn: number | undefined, within: Within): readonly LotMark[] {
  const marks = within.get(element) ?? [];
  const cell = cells.find(({ at }) => at === vinColumn);
  if (cell === undefined || vinsIn(marks).size < 2 || vinsIn(within.get(cell.element)).size !== 1) return marks;
  const others = cells.filter((one) => one !== cell && vinsIn(within.get(one.element)).size > 0);
  const told = new Set(others.flatMap((one) => within.get(one.element) ?? []));
  return marks.filter((mark) => !told.has(mark));
}

/** Without heads, one row with a car's name and another with a VIN are two facts of the same lot. */
function areAlike(cards: readonly LotCard[]): boolean {
  const has = (kind: LotMark['kind']) => cards.filter(({ marks }) => marks.some((mark) => mark.kind === kind)).length;
  return has('vin') >= cards.length * 0.7 || has('name') >= cards.length * 0.7;
}

const rowsHeld = ({ element }: TableCell): number => {
  const down = Number(attributeOf(element, 'rowspan') || '1');
  return down >= 1 && down <= 10 ? down : 1;
};

/** One text under a row, and no head of a group, sum or time. */
function isAnnounced({ element, cells }: TableRow): boolean {
  const full = cells.filter((cell) => cell.text !== '');
  if (full.length !== 1 || element.parent?.tag === 'tfoot') return false;
  return full.every((cell) => cell.element.tag !== 'th' && !/\$ ?\d|\b20\d\d\b|\btimes\b/i.test(cell.text));
}

/** A row whose VIN is missing or masked is a lot all the same if the table says year and make, or model, of it. */
function namesACar(row: TableRow, head: TableRow): boolean {
  const said = row.cells.flatMap((cell) => {
    const over = head.cells.find((one) => cell.at >= one.at && cell.at < one.at + one.span);
    if (over === undefined || cell.text === '') return [];
    const { fact } = labelRoles(over.text);
    return [...fact.keys()].filter((role) => role !== 'year' || /^(?:19|20)\d\d$|^['’]?\d\d$/.test(cell.text));
  });
  return said.includes('year') && (said.includes('make') || said.includes('model'));
}

/** Labels at the left and a lot in each column; blocks of such rows one over the other. */
function lotsInColumns({ rows, columns }: TableModel, within: Within): readonly LotCard[] {
  if (columns < 3) return [];
  const blocks = blocksOf(rows);
  const cards = blocks.flatMap((block) => {
    const byColumn = new Map<number, TableCell[]>();
    for (const row of block) {
      for (const cell of row.cells) if (cell.at > 0) byColumn.set(cell.at, [...(byColumn.get(cell.at) ?? []), cell]);
    }
    return [...byColumn.values()].flatMap((cells): readonly LotCard[] => {
      const marks = cells.flatMap((cell) => within.get(cell.element) ?? []);
      const full = cells.filter((cell) => cell.text !== '').length;
      return isOneLot(marks) && full >= 3 ? [{ roots: cells.map((cell) => cell.element), marks }] : [];
    });
  });
  // A single one is a lot whose labels and values take turns in its rows.
  return cards.length >= 2 ? cards : [];
}

/** Rows up to the one whose label comes again, or up to a break. */
function blocksOf(rows: readonly TableRow[]): readonly (readonly TableRow[])[] {
  const blocks: TableRow[][] = [[]];
  let seen = new Set<string>();
  for (const row of rows) {
    const label = row.cells.find((cell) => cell.at === 0)?.text.toLowerCase() ?? '';
    const again = label !== '' && seen.has(label);
    // A row that names no fact is over the lots that follow.
    const isOver = label === '' && seen.size > 0;
    if (again || isOver || row.kind === 'break') {
      blocks.push([]);
      seen = new Set();
    }
    if (row.kind === 'break') continue;
    seen.add(label);
    blocks.at(-1)?.push(row);
  }
  return blocks.filter((block) => block.length >= 3);
}
