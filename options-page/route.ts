/** The screens of the companion page, and what each needs to know. The hash is the whole address: `#/lot/<id>`. */
export type Route =
  | { readonly screen: 'lots' }
  | { readonly screen: 'lot'; readonly id: string }
  | { readonly screen: 'add' }
  | { readonly screen: 'setup'; readonly part: string }
  | { readonly screen: 'backup' }
  | { readonly screen: 'demo-load' }
  | { readonly screen: 'unknown'; readonly hash: string };

/** Reads `location.hash`. An empty one is the watchlist; one that means nothing says so instead of guessing. */
export function readRoute(hash: string): Route {
  const [screen = '', rest = ''] = hash.replace(/^#\/?/, '').split('/', 2);
  switch (screen) {
    case '':
    case 'lots':
      return { screen: 'lots' };
    case 'lot':
      return { screen: 'lot', id: rest };
    case 'setup':
      return { screen: 'setup', part: rest };
    case 'add':
    case 'backup':
    case 'demo-load':
      return { screen };
    default:
      return { screen: 'unknown', hash };
  }
}
