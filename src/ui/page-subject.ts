import { useEffect } from 'preact/hooks';
import { keptState } from './kept-state.ts';

const subject = keptState('');

/** Which car, day or month the screen is about; empty where it is about none. */
export const useShownSubject: () => string = subject.use;

/** Names which car, day or month the screen is about, in the window's title and at the head of every printed page. */
export function usePageSubject(name: string): void {
  useEffect(() => {
    subject.set(name);
    return () => subject.set('');
  }, [name]);
}
