import { FIRST_VIEW } from '../../src/views/lots/first-view.ts';
import { LotTableFrame } from '../lots/lot-table-frame.tsx';
import { Frame } from '../shell/frame.tsx';

/**
 * The list before any lot is known. The build writes it into the page as markup, which costs the browser less than a
 * program that makes it. There is room for the list's tools; they come with the program that does what they say.
 */
export function FirstFrame({ narrow }: { narrow: boolean }) {
  return (
    <Frame screen="lots" clock={<div class="store-clock small" />}>
      <div class="watchlist" aria-busy="true">
        <h1 class="visually-hidden">Lots</h1>
        <div class="list-tools-room no-print" />
        <LotTableFrame narrow={narrow} count={0} view={FIRST_VIEW} onView={nothingYet}>
          {null}
        </LotTableFrame>
      </div>
    </Frame>
  );
}

const nothingYet = () => undefined;
