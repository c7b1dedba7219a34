/** The list with one element replaced. */
export const replaceAt = <T>(list: readonly T[], index: number, element: T): T[] => list.with(index, element);

/** The list without one element. */
export const removeAt = <T>(list: readonly T[], index: number): T[] => list.toSpliced(index, 1);

/** The list with an element before the one at `index`; at its length, behind the last. */
export const insertAt = <T>(list: readonly T[], index: number, element: T): T[] => list.toSpliced(index, 0, element);

/** The object with one optional field set, or without it when the value is undefined. */
export function withField<T extends object, Key extends keyof T>(object: T, key: Key, value: T[Key] | undefined): T {
  const { [key]: _old, ...rest } = object;
  // Leaving an optional field out keeps the type; a required one is never emptied by its input.
  return (value === undefined ? rest : { ...rest, [key]: value }) as T;
}
