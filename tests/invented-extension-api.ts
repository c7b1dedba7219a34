/**
 * What stands for webextension-polyfill in tests in Node, which refuses to be loaded outside an extension: the interface
 * that a test puts into the global `chrome`, and nothing before that.
 */
const there = globalThis as { readonly chrome?: object };
export default new Proxy(
  {},
  { get: (_, name) => (there.chrome === undefined ? undefined : Reflect.get(there.chrome, name)) },
);
