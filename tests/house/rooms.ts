/**
 * Which room may use which others; each may use itself. Arrows run one way, from the screens down to the core, so this
 * list has no circle in it.
 */
export const ROOMS = {
  'src/domain': [],
  'src/journal': ['src/domain'],
  'src/messages': ['src/domain', 'src/journal'],
  'src/browser': ['src/domain', 'src/journal'],
  'src/store': ['src/domain', 'src/journal'],
  'src/capture': ['src/domain', 'src/journal'],
  'src/intake': ['src/domain', 'src/journal'],
  'src/injected': ['src/domain', 'src/journal', 'src/messages', 'src/browser', 'src/capture'],
  'src/demo': ['src/domain', 'src/journal'],
  'src/ui': ['src/domain', 'src/journal', 'src/store'],
  'src/reading': ['src/domain', 'src/journal', 'src/browser', 'src/store', 'src/capture', 'src/ui'],
  'src/background': [
    'src/domain',
    'src/journal',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/ui',
    'src/reading',
  ],
  'src/popup': [
    'src/domain',
    'src/journal',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/ui',
    'src/reading',
  ],
  'options-page': [
    'src/domain',
    'src/journal',
    'src/messages',
    'src/browser',
    'src/store',
    'src/capture',
    'src/intake',
    'src/ui',
    'src/demo',
  ],
} as const satisfies Record<string, readonly string[]>;

export type Room = keyof typeof ROOMS;

/** Packages that the pure rooms may use: each computes, and none touches a browser, a clock or chance. */
export const PURE_PACKAGES = {
  'src/domain': ['zod', 'd3-array', 'chrono-node'],
  'src/journal': ['zod', '@noble/hashes'],
} as const satisfies Partial<Record<Room, readonly string[]>>;

/** The room a file lies in, or undefined for what is outside the program. */
export function roomOf(file: string): Room | undefined {
  return (Object.keys(ROOMS) as Room[]).find((room) => file.startsWith(`${room}/`));
}
