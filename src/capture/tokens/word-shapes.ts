/** Words for how a car is driven, wherever they stand. */
const DRIVE =
  /(?<![\p{L}\d-])(?:4 ?[x×] ?[24]|6 ?[x×] ?[246]|4WD|2WD|AWD|FWD|RWD|(?:all|four|two|front|rear)[- ]wheel[- ]drive|(?:front|rear|all|four)[- ]wheels? (?:drive|only)|rear[- ]wheel|front[- ]wheel|quatre roues motrices|traction (?:avant|arrière|intégrale)|propulsion|tracción (?:trasera|delantera|integral|total|en las cuatro ruedas)|[24]RM|(?:tracción|traccion) 4 ?[x×] ?[24]|roues (?:avant|arrière) motrices|à (?:quatre|deux) roues motrices|(?:doble|sencilla) tracción|delantera|trasera|Allrad(?:antrieb)?|Hinterradantrieb|Frontantrieb|Heckantrieb)(?![\p{L}\d])/iu;

const COUNT = String.raw`(?:\d{1,2}|five|six|seven|eight|nine|ten)`;
/** Words for a gearbox. */
const GEARBOX = new RegExp(
  String.raw`(?<![\p{L}\d])(?:${COUNT}[- ]?(?:speeds?|spd?|sp|vitesses|velocidades|-?gang)\.?(?: (?:automatic|auto|manual|man|automatique|manuelle|automática|automatik|a\/t|m\/t)\b)?|(?:automatic|manual|automatique|manuelle|automática|automático|Automatik|Schaltgetriebe|CVT)(?:,? ?\(?${COUNT}(?:[- ]?(?:speeds?|spd|vitesses|velocidades|gang))?\)?)?|auto|aut\.?|man\.?|estándar|A\/T|M\/T)(?![\p{L}])`,
  'iu',
);

const STATEMENT =
  /\b(?:clean|clr|cln|clear|slvg|salv|rblt|rbld|salvage|rebuilt|rebuildable|reconstructed|branded|lemon|buy ?back|flood|fire|hail|junk|non-?repairable|bonded|lien|absent|attached|present|in hand|on hand|title|certificate|theft|export|repossession|repo|bill of sale|tmu|not actual|duplicate|lost|missing|pending|to follow|limpio|limpia|salvamento|reconstruido|propre|vierge|récupéré|reconstruit|irrécupérable|accidenté|unfallfrei|sauber|original|prior|none|signed|duly|mco|mso|off[- ]lease|marks?|brands?|libre|gravamen|rematado|siniestrado|hagelschaden|mail(?:ed)?|arriving|arrives?|electronic|paper|state|title[- ]less|no title|affidavit|lien[- ]?sale)\b/iu;
const BARE_TITLE =
  /^(?:(?:actual|[\p{Lu}]{2}|[\p{L}]+,?) )?(?:clean|clear|salvage|rebuilt|reconstructed|branded|flood|junk|lemon law|bonded|non-?repairable)(?: [\p{L}]+)? (?:title|certificate|papers)(?: [-–(].{1,40})?$/iu;

export const driveIn = (text: string): string | null => DRIVE.exec(text)?.[0] ?? null;
export const gearboxIn = (text: string): string | null => GEARBOX.exec(text)?.[0] ?? null;
export const isTitleStatement = (text: string): boolean => text.length <= 140 && STATEMENT.test(text);
/** `Salvage title` without any label. */
export const isBareTitle = (text: string): boolean => text.length <= 60 && BARE_TITLE.test(text);
/** `Salvage` alone, where only a title can be meant. */
export const isTitleWord = (text: string): boolean =>
  /^(?:clr|clear|slvg|salv|rblt|lien|salvage|rebuilt|rebuildable|reconstructed|branded|non-?repairable|lemon law|flood)(?: \([^)]{2,20}\))?$/i.test(
    text,
  );
