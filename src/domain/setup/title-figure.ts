import type { Ppm } from '../money/rate.ts';
import type { TitleBrand } from './money-rules.ts';

/** Until version 0.2 the starting figure was marked by these words in the caution. A saved setup can still hold them. */
const OLD_MARK = '80% is only a starting figure. Enter what such cars bring you.';
const OLD_FIGURE = 800_000;

/** Whether nobody has confirmed what the title leaves of clean retail. */
export function isUnconfirmed({ unconfirmed, caution, keepsPpm }: TitleBrand): boolean {
  return unconfirmed === true || (keepsPpm === OLD_FIGURE && (caution ?? '').includes(OLD_MARK));
}

/**
 * The title with the dealer's own figure.
 * @param keepsPpm share of clean retail that it brings
 */
export function confirmedTitle(title: TitleBrand, keepsPpm: Ppm): TitleBrand {
  const { unconfirmed: _, caution, ...rest } = title;
  const own = caution?.replace(OLD_MARK, '').trim();
  return { ...rest, keepsPpm, ...(own === undefined || own === '' ? {} : { caution: own }) };
}
