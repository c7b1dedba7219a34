import { useEffect } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { pageHeads } from './page-heads.ts';

/**
 * Titles the window with the screen and the store, which browsers print on every page, and where a browser can, writes both
 * with the day and the page's number into the margins.
 */
export function usePageHeads(screen: string, { name, zone }: { readonly name: string; readonly zone: Zone }): void {
  useEffect(() => {
    document.title = [screen, name, 'Headroom'].filter(Boolean).join(' · ');
    // The window alone is titled where a style sheet can't be made by a program.
    if (!('adoptedStyleSheets' in document)) return;
    const sheet = new CSSStyleSheet();
    const write = () => {
      const at = instant(Date.now());
      const date = dateIn(zone, at);
      sheet.replaceSync(pageHeads([screen, name].filter(Boolean).join(' · '), `${sayDate(date)}, ${date.slice(0, 4)}`));
    };
    write();
    document.adoptedStyleSheets.push(sheet);
    // The day may have changed since.
    addEventListener('beforeprint', write);
    return () => {
      removeEventListener('beforeprint', write);
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
    };
  }, [screen, name, zone]);
}
