import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import type { PageElement, PageNode, PageTree } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { DraftFields, TiedField } from '../draft/draft-lot.ts';
import { bareVins } from '../fields/find-vins.ts';
import { isAnothers, marksOfOthers } from './anothers-part.ts';
import type { LotMark } from './lot-marks.ts';

/** Where the page says what ties a figure to a car. */
export interface Tie {
  readonly field: TiedField;
  readonly figure: readonly PageNode[];
  readonly vin: readonly PageNode[];
  /** Where the page names the lot beside its VIN. */
  readonly names: { readonly number: readonly PageNode[]; readonly year: readonly PageNode[] };
}

/** The ties of each lot of a page, and the VINs that stand on the page where nobody sees them. */
export interface TiesFound {
  readonly lots: readonly (readonly Tie[])[];
  readonly hiddenVins: ReadonlySet<string>;
}

/**
 * The fields of one lot that the page itself ties to the lot's VIN: both are visible text, both are read without doubt,
 * and the part of the page that the figure stands in tells of no other car.
 * @param marks every VIN and car's name on the page, also in the parts that are about others
 */
export function tiesOf(fields: DraftFields, read: Candidates, marks: readonly LotMark[]): readonly Tie[] {
  const vin = fields.vin?.settled === true ? fields.vin.readings[0] : undefined;
  const known = vin === undefined ? undefined : readVin(vin.value);
  if (vin === undefined || known?.ok !== true || vin.sure === 'doubtful' || !checkDigitMatches(known.value)) return [];
  const at = read.nodesOf('vin', vin.value);
  const others = marksOfOthers(marks, vin.value, at);
  const figures: Record<TiedField, readonly PageNode[]> = {
    priceNow: placesOf('priceNow', fields, read),
    close: placesOf('close', fields, read),
  };
  const [number, year] = [fields.lotNumber?.readings[0]?.value, fields.year?.readings[0]?.value];
  const names = {
    number: number === undefined ? [] : read.nodesOf('lotNumber', number),
    year: year === undefined ? [] : read.nodesOf('year', year),
  };
  return (['priceNow', 'close'] as const).flatMap((field): Tie[] => {
    const figure = figures[field];
    const apart = figure.some((node) => isAnothers(node, at, others));
    return figure.length === 0 || at.length === 0 || apart ? [] : [{ field, figure, vin: at, names }];
  });
}

/** VINs in the parts of a page that nobody sees, such as panels that are not in front. */
export function hiddenVins(tree: PageTree): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting: PageElement[] = [tree.root];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    for (const child of next.children) {
      if (child.kind === 'element') waiting.push(child);
      else if (next.showing === 'hidden') for (const vin of bareVins(child.text.slice(0, 2000))) found.add(vin);
    }
  }
  return found;
}

function placesOf(name: TiedField, fields: DraftFields, read: Candidates): readonly PageNode[] {
  const field = fields[name];
  const first = field?.settled === true ? field.readings[0] : undefined;
  if (first === undefined || first.sure === 'doubtful' || first.from === 'structured-data') return [];
  return read.nodesOf(name, first.value);
}
