/** Months and weekdays as pages name them: English, French, Spanish, German; whole or cut short. */
const MONTHS: readonly string[] = [
  'january|jan|janvier|janv|enero|ene|januar|jänner',
  'february|feb|février|fevrier|févr|fevr|fév|febrero|februar',
  'march|mar|mars|marzo|märz|maerz|mrz',
  'april|apr|avril|avr|abril|abr',
  'may|mai|mayo',
  'june|jun|juin|junio|juni',
  'july|jul|juillet|juil|julio|juli',
  'august|aug|août|aout|agosto|ago',
  'september|sept|sep|septembre|septiembre|set',
  'october|oct|octobre|octubre|oktober|okt',
  'november|nov|novembre|noviembre',
  'december|dec|décembre|decembre|déc|diciembre|dic|dezember|dez',
];

const WEEKDAYS: readonly (readonly [name: string, words: string])[] = [
  ['Mon', 'mondays?|mon|lundi|lun|lunes|montag|mo(?=[.,])'],
  ['Tue', 'tuesdays?|tues|tue|mardi|mar(?=\\.? \\d)|martes|dienstag|di(?=[.,])'],
  ['Wed', 'wednesdays?|weds|wed|mercredi|mer|miércoles|miercoles|mié|mittwoch|mi(?=[.,])'],
  ['Thu', 'thursdays?|thurs|thur|thu|jeudi|jeu|jueves|jue|donnerstag|do(?=[.,])'],
  ['Fri', 'fridays?|fri|vendredi|ven|viernes|vie|freitag|fr(?=[.,])'],
  ['Sat', 'saturdays?|sat|samedi|sam|sábado|sabado|sáb|sab|samstag|sonnabend|sa(?=[.,])'],
  ['Sun', 'sundays?|sun|dimanche|dim|domingo|dom|sonntag|so(?=[.,])'],
];

const RELATIVE: readonly (readonly [word: string, words: string])[] = [
  ['today', "today|tonight|this (?:morning|afternoon|evening)|aujourd['’]hui|hoy|heute"],
  ['tomorrow', 'tomorrow|demain|mañana|morgen'],
];

const NOT_LETTER_BEFORE = '(?<![\\p{L}\\p{N}])';
const NOT_LETTER_AFTER = '(?![\\p{L}])';
const any = (words: readonly string[]): string => `(?:${words.join('|')})`;

export const MONTH = `${any(MONTHS)}\\.?`;
export const WEEKDAY = any(WEEKDAYS.map(([, words]) => words));
export const RELATIVE_DAY = any(RELATIVE.map(([, words]) => words));

const whole = (words: string): RegExp => new RegExp(`^(?:${words})\\.?$`, 'iu');
const MONTH_TESTS = MONTHS.map(whole);
const WEEKDAY_TESTS = WEEKDAYS.map(([name, words]) => [name, whole(words.replace(/\(\?=[^)]*\)/g, ''))] as const);
const RELATIVE_TESTS = RELATIVE.map(([word, words]) => [word, whole(words)] as const);

/** 1 to 12; 0 for what is no month. */
export const monthNumber = (word: string): number => MONTH_TESTS.findIndex((test) => test.test(word)) + 1;

/** `Mon` to `Sun`; empty for what is no weekday. */
export const weekdayName = (word: string): string =>
  WEEKDAY_TESTS.find(([, test]) => test.test(word.trim()))?.[0] ?? '';

/** `today` or `tomorrow`; empty for what is neither. */
export const relativeDay = (word: string): string =>
  RELATIVE_TESTS.find(([, test]) => test.test(word.trim()))?.[0] ?? '';

/** A pattern between words, not within one. */
export const apart = (pattern: string): string => `${NOT_LETTER_BEFORE}(?:${pattern})${NOT_LETTER_AFTER}`;
