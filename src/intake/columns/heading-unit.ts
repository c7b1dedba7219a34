/**
 * Words in a heading that say that its figures are not plain dollars, or not plain miles: "Retail $k", "Recon (cents)",
 * "Retail CAD", "Odometer (000s)", "Recon hours".
 */
const UNIT =
  /\$ ?k(?!\p{L})|(?<!\p{L})(?:k|ca?|au?|mx|nz) ?\$|(?:^|[^\p{L}])(?:k(?! ?\$)|mm?|thou(?:sands?)?|hundreds?|millions?|cents?|hours?|hrs?|percent|pct|[x×] ?1,?0{2,3}|cad|eur|gbp|mxn|aud|nzd|jpy|chf|euros?|pounds?|pesos?)(?!\p{L})|(?<!\d)['’]?(?:0{3}|0{2}s)['’]?s?(?!\d)|[¢€£¥₹₽%]/iu;

/** The words of another unit in a heading over amounts or miles; null where there are none. */
export function unitInHeading(heading: string): string | null {
  if (heading.length > 200) return null;
  return (
    UNIT.exec(heading)?.[0]
      .replace(/^[^\p{L}\d$¢€£¥₹₽%×'’]+/u, '')
      .trim() ?? null
  );
}
