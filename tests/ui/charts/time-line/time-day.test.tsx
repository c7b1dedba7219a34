// @vitest-environment jsdom

import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { type Instant, instant } from '../../../../src/domain/time/instant.ts';
import { localDateSchema } from '../../../../src/domain/time/local-date.ts';
import { HOUR } from '../../../../src/domain/time/units.ts';
import { zone } from '../../../../src/domain/time/zone.ts';
import { dayFrame } from '../../../../src/domain/week/day-frame.ts';
import { TimeDay } from '../../../../src/ui/charts/time-line/time-day.tsx';

const frame = dayFrame(localDateSchema.parse('2026-11-26'), zone('America/Boise'), { from: 0, to: 24 });

function show(now: Instant, alerts: readonly Instant[] = []): void {
  act(() =>
    render(
      <TimeDay
        row={{ frame, bands: [], marks: [], collisions: [], head: null }}
        alerts={alerts}
        words={{ ofMark: () => '', ofCrowd: () => '', crowdHref: () => '' }}
        now={now}
        track={376}
        ownHours={false}
        tabStop={undefined}
        onRead={() => undefined}
      />,
      document.body,
    ),
  );
}

afterEach(() => act(() => render(null, document.body)));

test('late in the evening the word for now stands before its rule, where there is room, and else after it', () => {
  show(instant(frame.from + 23.3 * HOUR));
  expect(document.querySelector('.time-now')?.className).toBe('time-now late');
  show(instant(frame.from + 9 * HOUR));
  expect(document.querySelector('.time-now')?.className).toBe('time-now');
});

test('the tick of an alert in the last minutes of a day stays within the day', () => {
  show(frame.from, [instant(frame.to - 60_000)]);
  expect(document.querySelector<HTMLElement>('.time-tick')?.getAttribute('style')).toContain('min(');
});
