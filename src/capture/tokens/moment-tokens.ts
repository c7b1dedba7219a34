import { type ClockToken, clocksIn } from './clock-tokens.ts';
import { type DateToken, datesInText } from './date-tokens.ts';
import { weekdayName } from './day-words.ts';
import { zonesIn } from './zone-tokens.ts';

/** A day, a time of day, or both, with their zone, as they stand together in a text. */
export interface MomentToken {
  readonly date: DateToken | null;
  readonly clock: ClockToken | null;
  /** Words for the zone; empty when none stands beside the time. */
  readonly zone: string;
  /** Whether morning or afternoon is said beside it: `a`, `p`, or empty. */
  readonly part: '' | 'a' | 'p';
  /** The whole moment where it is written for machines: `2026-11-28T14:05:00-07:00`; else empty. */
  readonly iso: string;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const ISO = /(?<![\d-])20\d\d-\d\d-\d\dT\d\d:?\d\d(?::?\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)?(?![\d-])/g;

/** What may stand between the parts of one moment. */
const BETWEEN =
  /^(?:[\s,.;:()[\]|·•–—@*-]|(?<!\p{L})(?:at|on|by|of|the|from|um|el|le|les|la|las|los|à|a|den|dem|kl|sharp|promptly|no later than|morning|afternoon|evening|night)(?!\p{L}))*$/iu;
const FARTHEST = 24;
const MOST = 60;

interface Part {
  readonly kind: 'date' | 'clock' | 'zone';
  readonly start: number;
  readonly end: number;
  readonly date?: DateToken;
  readonly clock?: ClockToken;
  readonly zone?: string;
}

/** Every moment of a text, in its order; parts that belong together are one. */
export function momentsIn(text: string, language: string): readonly MomentToken[] {
  if (!/\d|noon|midday|past|day|night|heute|morgen|demain|mañana/i.test(text)) return [];
  const isos = [...text.matchAll(ISO)].map((match) => isoMoment(match[0], match.index));
  const plain = text.replace(ISO, (iso) => ' '.repeat(iso.length));
  const dates = datesInText(plain, language);
  const clocks = clocksIn(plain).filter(
    (clock) => !dates.some((date) => clock.start < date.end && date.start < clock.end),
  );
  const zones = zonesIn(plain);
  const parts: Part[] = [
    ...dates.map((date): Part => ({ kind: 'date', start: date.start, end: date.end, date })),
    ...clocks.map((clock): Part => ({ kind: 'clock', start: clock.start, end: clock.end, clock })),
    ...zones.map(({ zone, start, end }): Part => ({ kind: 'zone', start, end, zone })),
  ].sort((a, b) => a.start - b.start);
  const grouped = groupsOf(parts, plain).flatMap((group) => momentOf(group, plain) ?? []);
  return [...isos, ...grouped, ...turns(text)].sort((a, b) => a.start - b.start).slice(0, MOST);
}

/** `Midnight as Sunday turns into Monday`: a midnight that can be only one. */
function turns(text: string): readonly MomentToken[] {
  const told = /\bmidnight\b[^.;]{0,20}?\b\p{L}+ (?:turns|becomes|rolls|passes)(?: in)?to (\p{L}+)/iu.exec(text);
  const weekday = weekdayName(told?.[1] ?? '');
  if (told === null || weekday === '') return [];
  const [start, end] = [told.index, told.index + told[0].length];
  const date = { date: '', weekday, guessed: false, start, end };
  return [
    { date, clock: { time: '00:00', half: false, start, end }, zone: '', part: '', iso: '', text: told[0], start, end },
  ];
}

const isoMoment = (iso: string, start: number): MomentToken => ({
  date: null,
  clock: null,
  zone: '',
  part: '',
  iso,
  text: iso,
  start,
  end: start + iso.length,
});

/** Runs of parts with nothing of weight between, each part at most once. */
function groupsOf(parts: readonly Part[], text: string): readonly (readonly Part[])[] {
  const groups: Part[][] = [];
  for (const part of parts) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    const between = last === undefined ? '' : text.slice(last.end, part.start);
    const joins =
      group !== undefined &&
      !group.some((one) => one.kind === part.kind) &&
      between.length <= FARTHEST &&
      BETWEEN.test(between) &&
      // A zone belongs to the time before it, a full stop ends what was said.
      !(part.kind === 'date' && group.some((one) => one.kind === 'zone') && /[;|]/.test(between));
    if (joins) group.push(part);
    else groups.push([part]);
  }
  return groups;
}

function momentOf(group: readonly Part[], text: string): MomentToken | null {
  const of = (kind: Part['kind']) => group.find((part) => part.kind === kind);
  const [date, clock, zone] = [of('date')?.date ?? null, of('clock')?.clock ?? null, of('zone')?.zone ?? ''];
  if (date === null && clock === null) return null;
  const [start, end] = [group[0]?.start ?? 0, group.at(-1)?.end ?? 0];
  const around = text.slice(start, end + 14);
  const part = /\b(?:afternoon|evening|tonight)\b/i.test(around) ? 'p' : /\bmorning\b/i.test(around) ? 'a' : '';
  return { date, clock, zone, part, iso: '', text: text.slice(start, end), start, end };
}
