// Characters that draw nothing or turn the writing direction: zero-width, soft hyphen, bidi marks and isolates, tags,
// variation selectors (all of Unicode's Default_Ignorable_Code_Point), and interlinear marks. A page can use them to make
// a text read differently from what it holds.
const INVISIBLE = /\p{Default_Ignorable_Code_Point}|[\uFFF9-\uFFFB]/gu;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are exactly what is taken out here.
const CONTROL = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F]/g;

/**
 * Text as it looks: no invisible or control characters, one plain blank for any blanks, line breaks kept as `\n`.
 * Digits of other scripts that Unicode gives a decimal value become 0-9, so that one number reader serves all; the Arabic marks
 * between thousands and before decimals become comma and point.
 */
export function cleanText(text: string): string {
  return plainDigits(text.replace(INVISIBLE, '').replace(CONTROL, ' '))
    .replace(/(?<=\d)\u066C(?=\d)/g, ',')
    .replace(/(?<=\d)\u066B(?=\d)/g, '.')
    .replace(/[^\S\n]+/g, ' ')
    .replace(/ ?\n[\n ]*/g, '\n')
    .trim();
}

/** The same on one line. */
export function cleanLine(text: string): string {
  return cleanText(text).replace(/\n/g, ' ');
}

/** At most `length` characters, cut at a whole character, with an ellipsis where something was cut. */
export function shorten(text: string, length: number): string {
  if (text.length <= length) return text;
  const cut = text.slice(0, length - 1);
  const whole = /[\uD800-\uDBFF]$/.test(cut) ? cut.slice(0, -1) : cut;
  return `${whole}…`;
}

// The first digit of each decimal set that turns up on pages: Arabic-Indic, Persian, Devanagari, Bengali, full-width.
const ZEROS = [0x660, 0x6f0, 0x966, 0x9e6, 0xff10];

function plainDigits(text: string): string {
  return text.replace(/[\u0660-\u0669\u06F0-\u06F9\u0966-\u096F\u09E6-\u09EF\uFF10-\uFF19]/g, (digit) => {
    const code = digit.charCodeAt(0);
    const zero = ZEROS.find((z) => code >= z && code < z + 10) ?? code;
    return String(code - zero);
  });
}
