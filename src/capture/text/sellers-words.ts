const BEGINS =
  /^[“"'«]?(?:the |le |la |el )?(?:sellers?|consignors?|owner|vendors?|vendeur|vendedor)(?:['’]s)? ?(?:writes?|wrote|says?|said|adds?|comments?|notes?|remarks?|words|écrit|dit|escribe|dice)\b/i;

/** Whether a line begins as somebody's own words about a car. He may write anything, also when another sale closes. */
export const isInSellersWords = (text: string): boolean => BEGINS.test(text);
