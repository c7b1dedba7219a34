import { defineConfig } from 'vitest/config';

/** Zones that differ in kind: none, the usual American ones, one without daylight saving, one in the other summer. */
const ZONES = [
  'UTC',
  'America/New_York',
  'America/Los_Angeles',
  'America/Phoenix',
  'Europe/London',
  'Pacific/Apia',
] as const;

/** What deals with time gives the same answers whatever zone the computer is in. */
export default defineConfig({
  test: {
    projects: ZONES.map((zone) => ({
      test: {
        name: zone,
        include: ['time', 'rush', 'alerts']
          .map((room) => `tests/domain/${room}/**/*.test.ts`)
          .concat('tests/zones/**/*.test.ts'),
        env: { TZ: zone },
        testTimeout: 60_000,
        isolate: false,
      },
    })),
  },
});
