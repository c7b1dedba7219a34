/** Octets a line may have without its break (RFC 5545, section 3.1). */
const MOST_OCTETS = 75;

/**
 * A property as it stands in an iCalendar file, folded and ended with its line break. A fold never cuts a character in
 * two, which the standard allows and some readers do not survive.
 * @param name with its parameters, if it has any: `DTSTART` or `TRIGGER;RELATED=START`
 * @param value as the property's type writes it; text goes through {@link textValue} first
 */
export function contentLine(name: string, value: string): string {
  let folded = '';
  let octets = 0;
  for (const character of `${name}:${value}`) {
    const more = octetsOf(character);
    if (octets + more > MOST_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += more;
  }
  return `${folded}\r\n`;
}

/**
 * Words as a value of the type TEXT (RFC 5545, section 3.3.11): backslash, semicolon, comma and line break escaped. What
 * the type has no place for is left out: control characters, and halves of characters that only UTF-16 knows.
 */
export function textValue(words: string): string {
  return words
    .replace(/\r\n?/g, '\n')
    .replace(/(?![\t\n])\p{Cc}|\p{Cs}/gu, '')
    .replace(/[\\;,]/g, '\\$&')
    .replaceAll('\n', '\\n');
}

/** The length of one character in UTF-8. */
function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
}
