/** French Canada writes closes by its own words and its own letters for the zones (common practice, no source). */
const MONTHS: readonly (readonly [RegExp, string])[] = [
  [/\bjanv(?:ier|\.)?(?![a-zé])/g, 'jan'],
  [/\bf[ée]vr(?:ier|\.)?(?![a-zé])/g, 'feb'],
  [/\bmars\b/g, 'mar'],
  [/\bavr(?:il|\.)?(?![a-z])/g, 'apr'],
  [/\bmai\b/g, 'may'],
  [/\bjuin\b/g, 'june'],
  [/\bjuil(?:let|\.)?(?![a-z])/g, 'july'],
  [/\bao[ûu]t\b/g, 'aug'],
  [/\bseptembre\b/g, 'sept'],
  [/\boctobre\b/g, 'oct'],
  [/\bnovembre\b/g, 'nov'],
  [/\bd[ée]c(?:embre|\.)?(?![a-zé])/g, 'dec'],
];

const DAYS: readonly (readonly [RegExp, string])[] = [
  [/\blun(?:di\b|\.)/g, 'mon'],
  [/\bmar(?:di\b|\.)/g, 'tue'],
  [/\bmer(?:credi\b|\.)/g, 'wed'],
  [/\bjeu(?:di\b|\.)/g, 'thu'],
  [/\bven(?:dredi\b|\.)/g, 'fri'],
  [/\bsam(?:edi\b|\.)/g, 'sat'],
  [/\bdim(?:anche\b|\.)/g, 'sun'],
];

/** E, C, R, P, A and T stand for Est, Centre, Rocheuses, Pacifique, Atlantique and Terre-Neuve. */
const ZONES: Readonly<Record<string, string>> = { e: 'e', c: 'c', r: 'm', p: 'p', a: 'a', t: 'n' };
const IN_WORDS =
  /\bheure( normale| avanc[ée]e)? (?:du |de l'|des |de )(est|centre|rocheuses|pacifique|atlantique|terre-neuve)/g;
const LETTER_OF: Readonly<Record<string, string>> = {
  est: 'e',
  centre: 'c',
  rocheuses: 'm',
  pacifique: 'p',
  atlantique: 'a',
  'terre-neuve': 'n',
};

const OTHER: readonly (readonly [RegExp, string])[] = [
  [/\bapr[èe]s-midi\b/g, 'afternoon'],
  [/\b(?:à )?midi\b/g, 'noon'],
  [/\b(?:à )?minuit\b/g, 'midnight'],
  [/\bapr[èe]s-demain\b/g, 'day after tomorrow'],
  [/\bdemain\b/g, 'tomorrow'],
  [/\baujourd'hui\b/g, 'today'],
  [/\bce soir\b/g, 'tonight'],
  [/\bhier\b/g, 'yesterday'],
  [/\b(?:du )?matin\b/g, 'morning'],
  [/\b(?:du )?soir\b/g, 'evening'],
  [/\bil reste\b/g, 'left'],
  [/\bse termine|\bferme(?= )|\bcl[ôo]ture\b|\bfin\b/g, 'closes'],
  [/\bferm[ée]e?s?(?![a-z])|\btermin[ée]e?s?(?![a-z])/g, 'closed'],
  [/(\d) ?(?:jours?|j)\b/g, '$1 days'],
  [/\b1er\b/g, '1'],
  [/\b(?:le|la|les|du|de)\b/g, ' '],
  [/(?<![a-z])à(?![a-z])/g, ' at '],
];

/** What nobody writes in English. */
const IS_FRENCH =
  /\b(?:janvier|février|fevrier|mars|avril|mai|juin|juillet|juil|août|septembre|octobre|novembre|décembre|déc|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|midi|minuit|demain|hier|reste|fermé|heure|h[na]?[ecrpat])\b|aujourd'hui|(?<![a-z])à(?![a-z])/;

/** A close in French, in lower case, as its English words; any other text as it is. */
export function inEnglish(text: string): string {
  if (!IS_FRENCH.test(text)) return text;
  const zoned = text
    .replace(/\bet\b/g, 'and')
    .replace(IN_WORDS, (_, season: string | undefined, place: string) =>
      zoneLetters(LETTER_OF[place] ?? '', season?.trim().charAt(0)),
    )
    .replace(/(?<![a-z])h([na]?)([ecrpat])(?![a-z])/g, (_, season: string, letter: string) =>
      zoneLetters(ZONES[letter] ?? letter, season),
    );
  return [...DAYS, ...MONTHS, ...OTHER].reduce((told, [pattern, word]) => told.replace(pattern, word), zoned);
}

/** n is for normale, standard time; a is for avancée, daylight time. */
const zoneLetters = (letter: string, season: string | undefined): string =>
  `${letter}${season === 'n' ? 's' : season === 'a' ? 'd' : ''}t`;
