/** A time still to go as it stands in a text. */
export interface CountdownToken {
  /** As the reader of countdowns takes it: `2d 3h 14m`. */
  readonly text: string;
  /** Told to the minute at least. */
  readonly precise: boolean;
  readonly start: number;
  readonly end: number;
}

const UNITS: readonly (readonly [unit: string, words: string])[] = [
  ['d', 'd|days?|j|jours?|días?|tage?n?'],
  ['h', 'h|hrs?|hours?|heures?|horas?|std|stunden?'],
  ['m', 'm|mins?|minutes?|minutos?|minuten?'],
  ['s', 's|secs?|seconds?|segundos?|sekunden?'],
];
const part = ([unit, words]: readonly [string, string]): string =>
  String.raw`(?:(?<${unit}>\d{1,3}) ?(?:${words})(?![\p{L}])\.?[\s,:]*(?:and |et |y |und )?)?`;
const WORDED = new RegExp(String.raw`(?<![\p{L}\d.,$:])(?=\d)${UNITS.map(part).join('')}`, 'giu');
const CLOCK = /(?<![\d:])(?:T-)?(?:(\d{1,3}) ?d(?:ays?)?,? ?)?(\d{1,3}):(\d{2}):(\d{2})(?![\d:]| ?[ap]\.?m\b)/giu;

/** Every countdown in a text; "13:45" alone could be hours or minutes, or a time of day, and is none. */
export function countdownsIn(text: string): readonly CountdownToken[] {
  if (!/\d/.test(text)) return [];
  const found: CountdownToken[] = [];
  for (const match of text.matchAll(WORDED)) {
    const { d, h, m, s } = match.groups ?? {};
    const told = [d && `${d}d`, h && `${h}h`, m && `${m}m`, s && `${s}s`].filter(Boolean).join(' ');
    if (told !== '')
      found.push({
        text: told,
        precise: m !== undefined || s !== undefined,
        start: match.index,
        end: match.index + match[0].length,
      });
  }
  for (const match of text.matchAll(CLOCK)) {
    const [, days = '0', hours, minutes, seconds] = match;
    found.push({
      text: `${days}d ${hours}h ${minutes}m ${seconds}s`,
      precise: true,
      start: match.index,
      end: match.index + match[0].length,
    });
  }
  return found.sort((a, b) => a.start - b.start).slice(0, 20);
}
