/** What a clock change does to a day, in words; empty when there is none. */
export function shiftWords(minutes: number): string {
  if (minutes === 0) return '';
  const hours = String(24 - minutes / 60);
  return `The clock goes ${minutes > 0 ? 'forward' : 'back'}: this day has ${hours} hours.`;
}
