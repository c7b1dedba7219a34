import { useRef } from 'preact/hooks';

/**
 * What a form holds once the box that a click left has been read: the click may come before the form is drawn with it.
 */
export function useLatest<Value>(value: Value): () => Promise<Value> {
  const latest = useRef(value);
  latest.current = value;
  return async () => {
    await new Promise((drawn) => setTimeout(drawn));
    return latest.current;
  };
}
