/**
 * Which room may use which others; each may use itself. Arrows run one way, from the screens down to the core, so this
 * list has no circle in it.
 */
export const ROOMS = {
  'src/domain': [],
  'src/journal': ['src/domain'],
  'src/folds': ['src/domain', 'src/journal'],
  'src/acts': ['src/domain', 'src/journal', 'src/folds'],
  'src/views': ['src/domain', 'src/journal', 'src/folds', 'src/acts'],
  'src/store': ['src/domain', 'src/journal', 'src/folds', 'src/views'],
  'src/team': ['src/domain', 'src/journal', 'src/views'],
  'src/team-program': [
    'src/domain',
    'src/journal',
    'src/views',
    'src/store',
    'src/team',
    'src/messages',
    'src/browser',
  ],
  'src/messages': ['src/domain', 'src/journal', 'src/folds'],
  'src/browser': ['src/domain', 'src/journal'],
  'src/capture': ['src/domain', 'src/journal', 'src/folds'],
  'src/intake': ['src/domain', 'src/journal', 'src/folds', 'src/views'],
  'src/injected': ['src/domain', 'src/journal', 'src/messages', 'src/browser', 'src/capture'],
  'src/demo': ['src/domain', 'src/journal', 'src/folds', 'src/views'],
  'src/ui': ['src/domain', 'src/journal', 'src/folds', 'src/acts', 'src/views', 'src/store', 'src/browser'],
  'src/reading': ['src/domain', 'src/journal', 'src/folds', 'src/views', 'src/browser', 'src/store', 'src/capture'],
  'src/background': [
    'src/domain',
    'src/journal',
    'src/folds',
    'src/acts',
    'src/views',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/reading',
  ],
  'src/popup': [
    'src/domain',
    'src/journal',
    'src/folds',
    'src/acts',
    'src/views',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/ui',
    'src/reading',
    'src/team',
  ],
  'options-page': [
    'src/domain',
    'src/journal',
    'src/folds',
    'src/acts',
    'src/views',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/ui',
    'src/demo',
    'src/team',
    'src/team-program',
  ],
} as const satisfies Record<string, readonly string[]>;

export type Room = keyof typeof ROOMS;

/** Packages that the pure rooms may use: each computes, and none touches a browser, a clock or chance. */
export const PURE_PACKAGES = {
  'src/domain': ['zod', 'd3-array', 'chrono-node', 'date-fns-tz'],
  'src/journal': [
    'zod',
    '@noble/hashes',
    '@peculiar/asn1-cms',
    '@peculiar/asn1-schema',
    '@peculiar/asn1-tsp',
    '@peculiar/asn1-x509',
  ],
  'src/folds': ['zod'],
  'src/acts': ['zod'],
  'src/views': ['zod'],
} as const satisfies Partial<Record<Room, readonly string[]>>;

/** The room a file lies in, or undefined for what is outside the program. */
export function roomOf(file: string): Room | undefined {
  return (Object.keys(ROOMS) as Room[]).find((room) => file.startsWith(`${room}/`));
}
