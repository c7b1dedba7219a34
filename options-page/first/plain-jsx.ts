/**
 * What JSX becomes where `drawOnce` draws it, in place of Preact's: its module would bring the whole of Preact along. The
 * build puts it into the program of the first rows.
 */
export const jsx = (type: unknown, props: object) => ({ type, props });
export const jsxs = jsx;
export const Fragment = ({ children }: { readonly children?: unknown }) => children;
