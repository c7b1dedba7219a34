import { useCallback } from 'preact/hooks';
import type { BookedHappening } from '../../src/journal/happenings/books.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** Books something, says it with an undo, and answers whether it was kept. */
export function useBook(): (happening: BookedHappening, said: string) => Promise<boolean> {
  const { store, say } = useWorkspace();
  return useCallback(
    async (happening, said) => {
      const booked = await store.book(happening);
      if (booked.ok) say(said, booked.value.at(-1)?.id);
      else say(booked.message);
      return booked.ok;
    },
    [store, say],
  );
}
