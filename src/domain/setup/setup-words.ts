import { fieldWords } from './field-words.ts';
import type { SetupSection } from './setup.ts';

/** What each section of the setup is called on the Setup screen, in a fault and in a preview. */
export const SECTION_WORDS: Readonly<Record<SetupSection, string>> = {
  store: 'Store',
  venues: 'Venues',
  feeSchedules: 'Buy fees',
  rules: 'Money rules',
  costs: 'Costs',
  undone: 'Costs › a canceled sale',
  reconTemplates: 'Recon templates',
  carrying: 'Holding',
  stock: 'Holding › your own cars',
  estimation: 'Estimating',
  corrections: 'Learn › corrections',
  titles: 'Titles',
  rush: 'Busy hours',
  alerts: 'Reminders',
  sites: 'Sites',
  books: 'Accounts',
  vendors: 'Vendors',
  certificates: 'Certificates',
};

/** One element of a list, by the list's key. */
const ELEMENT_WORDS: Readonly<Record<string, string>> = {
  venues: 'venue',
  certificates: 'certificate',
  feeSchedules: 'fee schedule',
  editions: 'rates',
  tables: 'table',
  bands: 'band',
  charges: 'charge',
  increments: 'bid increment',
  titles: 'title',
  reconTemplates: 'template',
  lines: 'recon line',
  models: 'model',
  cars: 'car',
  curtailments: 'curtailment',
  weekly: 'busy hours',
  exceptions: 'date',
  hours: 'busy hours',
  feeScheduleIds: 'fee schedule',
  leadMinutes: 'reminder',
  placedLeadMinutes: 'reminder',
  deadlineLeadMinutes: 'reminder',
  sites: 'site',
  places: 'place',
  closed: 'closed date',
  open: 'open date',
  worked: 'holiday',
  daysOff: 'day off',
};

const WEEKDAY_WORDS: Readonly<Record<string, string>> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

/** A weekday in full, by its key in the setup. */
export const weekdayWord = (weekday: string): string => WEEKDAY_WORDS[weekday] ?? weekday;

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth'];

/**
 * Where in a setup a path leads, as a person would say it: "Buy fees › Riverbend › Online fee › band 3 › from".
 * @param path keys and positions, as zod reports them
 * @param root the value the path leads through, possibly malformed; names and labels are taken from it
 */
export function placeInWords(path: readonly PropertyKey[], root: unknown): string {
  const words: string[] = [];
  let value = root;
  let listKey = '';
  path.forEach((key, depth) => {
    const list = Array.isArray(value) ? value : undefined;
    value = valueAt(value, key);
    if (depth === 0) words.push(sectionWords(String(key)));
    else if (list !== undefined) {
      const word = elementInWords(listKey, list, Number(key), root);
      if (word !== '') words.push(word);
    } else if (!isNamedByElements(String(key)) || depth === path.length - 1) {
      words.push(fieldWords(String(key)));
    }
    listKey = String(key);
  });
  return words.join(' › ');
}

/** "band 3" needs no "bands" in front of it; of the two lists of calls, "call 3" alone would not tell which. */
const isNamedByElements = (key: string) => key in ELEMENT_WORDS && !/leadMinutes$/i.test(key);

const sectionWords = (key: string) => (key in SECTION_WORDS ? SECTION_WORDS[key as SetupSection] : `“${key}”`);

/** The property of an unknown value, undefined where there is none. */
export function valueAt(value: unknown, key: PropertyKey): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
}

/** An element by its own name if it has one, else by its position. A single set of rates needs no name. */
function elementInWords(listKey: string, list: readonly unknown[], position: number, root: unknown): string {
  const element = list[position];
  if (listKey === 'feeScheduleIds') return `the fees ${scheduleName(root, element)}`;
  for (const key of ['name', 'label', 'date']) {
    const name = valueAt(element, key);
    if (typeof name === 'string' && name.trim() !== '') return name;
  }
  if (listKey === 'weekly') {
    const weekday = valueAt(element, 'weekday');
    if (typeof weekday === 'string') return `${weekdayWord(weekday)} from ${valueAt(element, 'from')}`;
  }
  if (listKey === 'editions') {
    if (list.length === 1) return '';
    const [from, to] = [valueAt(element, 'validFrom'), valueAt(element, 'validTo')];
    if (typeof from === 'string') return `rates from ${from}`;
    if (typeof to === 'string') return `rates until ${to}`;
  }
  const word = ELEMENT_WORDS[listKey] ?? 'entry';
  const ordinal = ORDINALS[position];
  return listKey === 'tables' && ordinal !== undefined ? `${ordinal} ${word}` : `${word} ${position + 1}`;
}

/** A venue names its fee schedules by id; people know them by name. */
function scheduleName(root: unknown, id: unknown): string {
  const schedules = valueAt(root, 'feeSchedules');
  const named = Array.isArray(schedules) ? schedules.find((schedule) => valueAt(schedule, 'id') === id) : undefined;
  return String(valueAt(named, 'name') ?? `“${id}”`);
}
