/** What stands in a body at a path of its own properties, as in `stations.3.faceMm`; undefined where nothing does. */
export function valueAt(body: unknown, path: string): unknown {
  let at = body;
  for (const step of path.split('.')) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Readonly<Record<string, unknown>>)[step];
  }
  return at;
}
