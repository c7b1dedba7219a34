import type { Route } from './route.ts';
import { SCREENS, type ScreenPart, type ScreenRow } from './screens.ts';

/**
 * What the window and every printed page are titled with: "Books: Payables".
 * @param subject which car, day or month it is about; empty where it is about none: "Worksheet: 2019 Alder Carrier"
 */
export function screenTitle(route: Route, subject = ''): string {
  const { title, parts }: ScreenRow = SCREENS[route.screen];
  const label = partIn(parts ?? [], route)?.label ?? '';
  return [title, [label, subject].filter(Boolean).join(', ')].filter(Boolean).join(': ');
}

function partIn(parts: readonly ScreenPart[], route: Route): ScreenPart | undefined {
  const wanted = route.screen === 'week' ? (route.show === 'day' ? ':date' : '') : 'part' in route ? route.part : '';
  return parts.find(({ part }) => part === wanted) ?? parts.find(({ part }) => part.startsWith(':'));
}
