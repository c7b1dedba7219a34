import { useCallback } from 'preact/hooks';
import type { AttachmentKind } from '../../src/domain/sale/attachment.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** Keeps files with a lot. Resolves to their hashes, or to null when one could not be kept; what is wrong is said. */
export function useKeepFiles(lot: LotState): (files: readonly File[]) => Promise<string[] | null> {
  const { store, say } = useWorkspace();
  return useCallback(
    async (files) => {
      const hashes: string[] = [];
      for (const file of files) {
        const kept = await store.keepAttachment(lot.id, { bytes: file, name: file.name, about: kindOf(file) });
        if (!kept.ok) {
          say(`${file.name}: ${kept.message}`);
          return null;
        }
        if (kept.value.warning !== null) say(kept.value.warning);
        hashes.push(kept.value.hash);
      }
      return hashes;
    },
    [store, say, lot.id],
  );
}

const kindOf = (file: File): AttachmentKind => (file.type.startsWith('image/') ? 'photo' : 'other');
