/** A time of day in a text, on the 24-hour clock; `half` is true where AM or PM is not said and both could be meant. */
export interface ClockToken {
  readonly time: string;
  readonly half: boolean;
  readonly start: number;
  readonly end: number;
}

const PART = String.raw`(?:in the|of the|de la|del|du|am) ?(?<part>morning|afternoon|evening|mañana|tarde|noche|matin|soir|après-midi|Morgen|Vormittag|Nachmittag|Abend)`;
const HALF = String.raw`(?<half>[ap]) ?\.? ?m?\b\.?(?![\p{L}])`;
const FORMS: readonly RegExp[] = [
  // 12 noon, 12:00 noon, noon
  /(?<![\p{L}\d:])(?:12(?::00)? ?)?(?<noon>noon|midday|mediodía|midi|Mittag)(?![\p{L}])/giu,
  // 2:05 PM, 2:05P, 11 AM, 1:10 p. m., 9:04:30 AM
  new RegExp(String.raw`(?<![\d:.,$])(?<h>\d{1,2})(?:[:.](?<m>\d\d))?(?::(?<s>\d\d)(?:\.\d+)?)? ?${HALF}`, 'giu'),
  // 12:30 in the afternoon, 9 in the morning
  new RegExp(String.raw`(?<![\d:.,$])(?<h>\d{1,2})(?::(?<m>\d\d))?(?: o['’]clock)? ${PART}`, 'giu'),
  // 14 h 30, 13h30, 14 h, 16 Uhr, 16:10 Uhr
  /(?<![\d:.,$])(?<h>\d{1,2})(?:(?: ?h ?(?<m>\d\d)?)|(?:[:.](?<m2>\d\d))? ?(?:Uhr|horas|heures?))(?![\p{L}\d])/giu,
  // 1345 HRS
  /(?<![\d:.,$])(?<h>[01]\d|2[0-3])(?<m>[0-5]\d) ?(?:hrs?|hours)(?![\p{L}])/giu,
  // 14:05, 9:00:30
  /(?<![\d:.,$]|T-)(?<h>\d{1,2}):(?<m>\d\d)(?::(?<s>\d\d)(?:\.\d+)?)?(?! ?[ap]\b)(?![\d:])(?: ?(?:Uhr|hrs?|horas)\b)?/giu,
];

const HOURS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const STEPS: Readonly<Record<string, number>> = {
  five: 5,
  ten: 10,
  quarter: 15,
  'a quarter': 15,
  twenty: 20,
  'twenty-five': 25,
  half: 30,
};
const WORDED = new RegExp(
  String.raw`(?<![\p{L}])(?<step>twenty-five|five|ten|a quarter|quarter|twenty|half) (?<way>past|to|after|before) (?<hour>${HOURS.join('|')}|\d{1,2})(?![\p{L}\d])(?: ?${HALF}| ${PART})?`,
  'giu',
);

/** Every time of day in a text, in its order. */
export function clocksIn(text: string): readonly ClockToken[] {
  const found: ClockToken[] = [];
  const put = (match: RegExpExecArray, read: { time: string; half: boolean } | null) => {
    const [start, end] = [match.index, match.index + match[0].trimEnd().length];
    if (read !== null && !found.some((one) => start < one.end && one.start < end)) found.push({ ...read, start, end });
  };
  for (const match of text.matchAll(WORDED)) put(match, worded(match.groups ?? {}));
  for (const form of FORMS)
    for (const match of text.matchAll(form)) put(match, inFigures(match.groups ?? {}, match[0]));
  return found.sort((a, b) => a.start - b.start);
}

type Groups = Readonly<Record<string, string | undefined>>;

function inFigures({ noon, h, m, m2, s, half, part }: Groups, whole: string): { time: string; half: boolean } | null {
  if (noon !== undefined) return { time: '12:00', half: false };
  const [hour, minute] = [Number(h), Number(m ?? m2 ?? 0)];
  const side = half?.toLowerCase() ?? sideOf(part);
  if (hour > 23 || minute > 59 || Number(s ?? 0) > 59) return null;
  const on24 = side === '' || hour > 12 || hour === 0 ? hour : (hour % 12) + (side === 'p' ? 12 : 0);
  // Fixed for the day in twenty-four hours: a leading nought, an hour after twelve, or a word that only such clocks use.
  const sure = side !== '' || hour > 12 || hour === 0 || /^0\d/.test(h ?? '') || /h|Uhr|hrs|horas/i.test(whole);
  return { time: written(on24, minute, s), half: !sure };
}

function worded({ step = '', way = '', hour = '', half, part }: Groups): { time: string; half: boolean } {
  const named = HOURS.indexOf(hour.toLowerCase()) + 1 || Number(hour);
  const minutes = STEPS[step.toLowerCase()] ?? 0;
  const past = /past|after/i.test(way);
  const base = past ? named : named === 1 ? 12 : named - 1;
  const side = half?.toLowerCase() ?? sideOf(part);
  const on24 = side === '' ? base : (base % 12) + (side === 'p' ? 12 : 0);
  return { time: written(on24, past ? minutes : 60 - minutes, undefined), half: side === '' };
}

function sideOf(part: string | undefined): '' | 'a' | 'p' {
  if (part === undefined) return '';
  return /morning|mañana|matin|morgen|vormittag/i.test(part) ? 'a' : 'p';
}

const written = (hour: number, minute: number, second: string | undefined): string =>
  `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}${second === undefined ? '' : `:${second}`}`;

/** The same time twelve hours on. */
export function afternoon(time: string): string {
  const hour = Number(time.slice(0, 2));
  return hour < 12 ? `${String(hour + 12).padStart(2, '0')}${time.slice(2)}` : time;
}
