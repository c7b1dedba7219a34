import { attributeOf, elementsWithin, type PageElement } from '../dom/page-tree.ts';
import { bareVins, labeledVin } from '../fields/find-vins.ts';
import { readVehicleName } from '../fields/vehicle-name.ts';
import { labelRoles } from '../roles/label-roles.ts';
import type { Line } from '../text/lines.ts';

/** Something on the page by which one lot is told from another: a VIN, or a line that names a car. */
export interface LotMark {
  readonly kind: 'vin' | 'name';
  readonly key: string;
  readonly element: PageElement;
  readonly heading: number;
  /** Part of a sentence, which may speak of any car. */
  readonly prose: boolean;
  /** The words before it say that it is another lot than that of the page: the next one, or one that is sold. */
  readonly others?: boolean;
}

const ATTRIBUTES = ['data-vin', 'title', 'data-clipboard-text', 'data-copy', 'aria-label', 'content', 'value'];

/** The marks that the lines of a page make, and those in attributes, in page order. */
export function lotMarks(
  lines: readonly Line[],
  root: PageElement,
  newest: number,
  makes: readonly string[],
): readonly LotMark[] {
  const marks = lines.flatMap((line, at) => {
    const before = lines[at - 1];
    const isUnder = before?.element === line.element && line.heading === 0 && SAYS_OTHER.test(before.text);
    const others = SAYS_OTHER.test(line.text) || isUnder;
    const found = marksOf(line, newest, makes);
    return others ? found.map((mark) => ({ ...mark, others })) : found;
  });
  const seen = new Set(marks.filter((mark) => mark.kind === 'vin').map((mark) => mark.key));
  for (const element of elementsWithin(root, (inner) => inner.showing === 'hidden')) {
    for (const name of ATTRIBUTES) {
      const value = attributeOf(element, name);
      if (value.length < 17 || value.length > 120) continue;
      for (const key of bareVins(value.toUpperCase())) {
        if (!seen.has(key)) marks.push({ kind: 'vin', key, element, heading: 0, prose: false });
      }
    }
  }
  return marks.sort((a, b) => a.element.order - b.element.order);
}

function marksOf(line: Line, newest: number, makes: readonly string[]): LotMark[] {
  const { element, heading, prose } = line;
  const vins = bareVins(line.text);
  const labeled = vins.length === 0 ? LABELLED.exec(line.text) : null;
  const named = labeled?.[1] !== undefined && (labelRoles(labeled[1]).fact.get('vin') ?? 0) > 0.9;
  const vin = named ? labeledVin(labeled?.[2] ?? '') : null;
  const marks = [...vins, ...(vin === null ? [] : [vin])].map(
    (key): LotMark => ({ kind: 'vin', key, element, heading, prose }),
  );
  if (line.text.length > 300) return marks;
  const name = readVehicleName(line.text, newest, makes);
  if (name === null || (prose && vins.length === 0)) return marks;
  // The same car is called the same, whatever else stands on the line.
  const key = `${name.year} ${name.make} ${name.model}`.toLowerCase();
  return [...marks, { kind: 'name', key, element, heading, prose }];
}

/** `NEXT: 0118 …`, `Sold 20 min ago`, `Prior: …` */
const SAYS_OTHER =
  /^[^\p{L}]{0,3}(?:(?:up )?next(?: up| lot| unit| one)?\s*(?:[:…–—-]|$|(?:19|20)\d\d)|prior\b|prev(?:ious)?\b(?! bid)|(?:just |already )?sold\b(?! by| for account)|sister\b|also\b|suivante?\b|précédent|siguiente:|anterior\b|vendu[es]?\b(?! par)|vendid[oa]s?\b(?! por)|nächstes los|withdrawn:)/iu;

const LABELLED = /^([\p{L}. ()#/]{2,30})(?: ?(?:#|no\.?|number))?[: ]+([A-HJ-NPR-Z0-9][A-HJ-NPR-Z0-9 -]{15,30})$/iu;
