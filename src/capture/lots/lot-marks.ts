import type { PageElement } from '../dom/page-tree.ts';
import { bareVins, labelledVin } from '../fields/find-vins.ts';
import { readVehicleName } from '../fields/vehicle-name.ts';
import type { Line } from '../text/lines.ts';

/** Something on the page by which one lot is told from another: a VIN, or a line that names a car. */
export interface LotMark {
  readonly kind: 'vin' | 'name';
  readonly key: string;
  readonly element: PageElement;
  readonly heading: number;
}

export function lotMarks(lines: readonly Line[], newest: number, makes: readonly string[]): readonly LotMark[] {
  return lines.flatMap((line): LotMark[] => {
    const { element, heading } = line;
    const vins = bareVins(line.text);
    const labelled =
      vins.length === 0 ? /^vin(?: ?(?:#|no\.?|number))?[: ]+(.{17,40})$/i.exec(line.text)?.[1] : undefined;
    const vin = labelled === undefined ? null : labelledVin(labelled);
    const marks = [...vins, ...(vin === null ? [] : [vin])].map(
      (key): LotMark => ({ kind: 'vin', key, element, heading }),
    );
    const name = line.prose || line.text.length > 120 ? null : readVehicleName(line.text, newest, makes);
    if (name === null) return marks;
    return [...marks, { kind: 'name', key: line.text.toLowerCase(), element, heading }];
  });
}
