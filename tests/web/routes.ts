import type { Express } from 'express';

interface Layer {
  readonly route?: { readonly path: unknown; readonly methods: Readonly<Record<string, boolean>> };
  readonly handle: { readonly stack?: readonly Layer[] };
  readonly slash: boolean;
  match(path: string): boolean;
}

/** Where routers are mounted; another place is found out by a failing test. */
const MOUNTS = ['/api', '/assets'];

/** Every route the program answers on, as `GET /jobs/:number`. */
export function routesOf(server: Express): readonly string[] {
  return [...new Set(walk((server as unknown as { router: { stack: Layer[] } }).router.stack, ''))];
}

function walk(stack: readonly Layer[], under: string): string[] {
  return stack.flatMap((layer) => {
    if (layer.route) {
      const { path, methods } = layer.route;
      if (typeof path !== 'string')
        throw new Error(`The path ${String(path)} is no text; name each by itself.`);
      const named = Object.keys(methods).filter((method) => method !== '_all');
      if (named.length === 0) throw new Error(`${under}${path} answers every method; name those it means.`);
      return named.map((method) => `${method.toUpperCase()} ${under}${path}`);
    }
    if (!layer.handle.stack) return [];
    if (layer.slash) return walk(layer.handle.stack, under);
    const mount = MOUNTS.find((one) => layer.match(`${one}/x`));
    if (mount === undefined) throw new Error('A router is mounted where tests/web/routes.ts does not look.');
    return walk(layer.handle.stack, under + mount);
  });
}
