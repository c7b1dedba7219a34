import type { RefObject } from 'preact';
import { useState } from 'preact/hooks';

/**
 * One stop for Tab in the whole picture; from there arrow keys walk the marks: left and right in the order of their
 * times, up and down to the nearest one of the day before and after, Home and End within the day.
 * @param first where Tab lands until another mark was reached
 */
export function useMarkKeys(picture: RefObject<HTMLElement | null>, first: string | undefined) {
  const [reached, setReached] = useState<string>();
  const known = reached !== undefined && markOf(picture.current, reached) !== undefined;
  const firstDrawn = first !== undefined && (picture.current === null || markOf(picture.current, first) !== undefined);
  const tabStop = known ? reached : firstDrawn ? first : marksIn(picture.current)[0]?.dataset.mark;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || picture.current === null) return;
    const at = document.activeElement;
    if (!(at instanceof HTMLElement) || at.dataset.mark === undefined) return;
    const next = destination(event.key, at, picture.current);
    if (next === null) return;
    event.preventDefault();
    next?.focus();
    next?.scrollIntoView({ block: 'nearest' });
  };
  const onFocusIn = (event: FocusEvent) => {
    if (event.target instanceof HTMLElement && event.target.dataset.mark !== undefined)
      setReached(event.target.dataset.mark);
  };
  return { tabStop, listeners: { onKeyDown, onFocusIn } };
}

const marksIn = (place: Element | null): HTMLElement[] => [
  ...(place?.querySelectorAll<HTMLElement>('[data-mark]') ?? []),
];

const markOf = (place: Element | null, id: string) => marksIn(place).find(({ dataset }) => dataset.mark === id);

/** Null for a key that is none of ours; undefined at the end of the way. */
function destination(key: string, from: HTMLElement, picture: HTMLElement): HTMLElement | undefined | null {
  const marks = marksIn(picture);
  const inDay = () => marksIn(from.closest('.time-day'));
  switch (key) {
    case 'ArrowRight':
      return marks[marks.indexOf(from) + 1];
    case 'ArrowLeft':
      return marks[marks.indexOf(from) - 1];
    case 'ArrowDown':
      return nearest(from, otherDay(from, 1));
    case 'ArrowUp':
      return nearest(from, otherDay(from, -1));
    case 'Home':
      return inDay()[0];
    case 'End':
      return inDay().at(-1);
    default:
      return null;
  }
}

/** The marks of the next day (or the one before) that has any. */
function otherDay(from: HTMLElement, step: 1 | -1): HTMLElement[] {
  let day: Element | null | undefined = from.closest('.time-day');
  do day = step === 1 ? day?.nextElementSibling : day?.previousElementSibling;
  while (day != null && marksIn(day).length === 0);
  return marksIn(day ?? null);
}

function nearest(from: HTMLElement, marks: readonly HTMLElement[]): HTMLElement | undefined {
  const middle = (mark: HTMLElement) => mark.getBoundingClientRect().left;
  const distance = (mark: HTMLElement) => Math.abs(middle(mark) - middle(from));
  return marks.toSorted((a, b) => distance(a) - distance(b))[0];
}
