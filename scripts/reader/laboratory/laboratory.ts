/** Pages by the hundred, from two parts of families that share nothing: rules are made with one and judged on the other. */
import { Dice } from '../dice.ts';
import { type Judged, judgePage } from '../score-lots.ts';
import { type PlainPage, readHtml } from '../stored-page.ts';
import { careful, tell, toldFields } from './facts.ts';
import type { Families } from './family.ts';
import { HELD_OUT_AROUNDS, HELD_OUT_DISTRACTORS, HELD_OUT_FRAMEWORKS } from './held-out-around.ts';
import { HELD_OUT_LAYOUTS, HELD_OUT_LISTS } from './held-out-layouts.ts';
import { HELD_OUT_STOCK, HELD_OUT_VOICES } from './held-out-part.ts';
import { inventedLots } from './invented-lot.ts';
import { LEARNED_AROUNDS, LEARNED_DISTRACTORS, LEARNED_FRAMEWORKS } from './learned-around.ts';
import { LEARNED_LAYOUTS, LEARNED_LISTS } from './learned-layouts.ts';
import { LEARNED_STOCK, LEARNED_VOICES } from './learned-part.ts';
import { speechOf } from './voice.ts';

export const LEARNED: Families = {
  stock: LEARNED_STOCK,
  voices: LEARNED_VOICES,
  layouts: LEARNED_LAYOUTS,
  lists: LEARNED_LISTS,
  arounds: LEARNED_AROUNDS,
  distractors: LEARNED_DISTRACTORS,
  frameworks: LEARNED_FRAMEWORKS,
};

export const HELD_OUT: Families = {
  stock: HELD_OUT_STOCK,
  voices: HELD_OUT_VOICES,
  layouts: HELD_OUT_LAYOUTS,
  lists: HELD_OUT_LISTS,
  arounds: HELD_OUT_AROUNDS,
  distractors: HELD_OUT_DISTRACTORS,
  frameworks: HELD_OUT_FRAMEWORKS,
};

/** A page with what a careful person reads on it, and the families that it is of. */
export interface InventedPage {
  readonly name: string;
  readonly html: string;
  readonly expected: PlainPage;
}

const NOW = Date.UTC(2026, 10, 27, 15);

/** The page of that number: the same one each time. One in three is a list. */
export function inventedPage(families: Families, number: number): InventedPage {
  const dice = new Dice(number * 7919);
  const { stock } = families;
  const house = dice.one(stock.houses);
  const speech = speechOf(dice.one(families.voices), dice);
  const inList = number % 3 === 0;
  const fields = toldFields(dice, inList);
  const lots = inventedLots(dice, stock, inList ? dice.whole(3, 9) : 1, NOW);
  const told = lots.map((lot) => tell(lot, fields, speech, house.zone, NOW));
  const [stranger] = inventedLots(dice, stock, 1, NOW).map((lot) => tell(lot, fields, speech, house.zone, NOW));
  const [own] = told;
  if (stranger === undefined || own === undefined) throw new Error('no lot to tell of');
  const [layout, show] = dice.one(Object.entries(families.layouts));
  const [list, showAll] = dice.one(Object.entries(families.lists));
  const [distractor, distract] = dice.one(Object.entries(families.distractors));
  const [framework, write] = dice.one(Object.entries(families.frameworks));
  const address = `https://${house.host}/lots/${inList ? 'all' : dice.whole(1000, 9999)}`;
  const link = ({ lot }: (typeof told)[number]) => `/lots/${lot.vin.slice(-6)}`;
  const beside = inList ? '' : distract(stranger, own, dice);
  const shown = inList ? showAll(told, link, speech.label('vehicle')) : show(own);
  const body = dice.happens(0.5) ? `${beside}${shown}` : `${shown}${beside}`;
  const frame = { house: house.name, sale: house.sale, host: house.host, language: speech.language };
  const title = inList ? `${house.sale} | ${house.name}` : `${own.name} | ${house.name}`;
  const html = `<!-- ${address} -->
<!doctype html><html lang="${speech.language}"><head><meta charset="utf-8"><title>${title}</title></head>
<body>${write(dice.one(families.arounds)(body, frame), dice)}</body></html>`;
  const shared = { venueName: house.name, sale: house.sale };
  const knowsMakes = dice.happens(0.6);
  const makes = knowsMakes ? { context: { makes: stock.cars.map(([make]) => make) } } : {};
  return {
    name: `${number}: ${inList ? list : layout}, ${inList ? 'list' : distractor}, ${framework}, ${speech.language}`,
    html,
    expected: {
      now: new Date(NOW).toISOString(),
      ...makes,
      kind: inList ? 'many' : 'one',
      lots: told.map((one) =>
        careful(one, inList ? { ...shared, pageUrl: new URL(link(one), address).href } : shared, knowsMakes),
      ),
    },
  };
}

/** Every value of that many pages, each judged. */
export async function judgeFamilies(
  families: Families,
  count: number,
  onPage: (page: InventedPage, judged: readonly Judged[]) => void = () => undefined,
): Promise<readonly Judged[]> {
  const all: Judged[] = [];
  for (let number = 1; number <= count; number++) {
    const page = inventedPage(families, number);
    const judged = judgePage(page.expected.lots, await readHtml(page.html, page.name, page.expected));
    onPage(page, judged);
    all.push(...judged);
  }
  return all;
}
