import { useEffect, useState } from 'preact/hooks';
import { useMedia } from './use-media.ts';

/** Whether the page is being printed, or shown as it would print. Known before the browser lays the sheets out. */
export function usePrinting(): boolean {
  const shownAsPrint = useMedia('print');
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const begin = () => setPrinting(true);
    const end = () => setPrinting(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  return printing || shownAsPrint;
}
