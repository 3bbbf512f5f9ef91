import type { Graph } from '../breach/cruiser';

/** What reaches a browser must not reach these. */
const SERVER_SIDE = /^app\/_(data|server)\/|^prisma\/generated\//;

/**
 * Ways from a client component to the server side of the house. The build refuses them as well, by `server-only`, but
 * late; and only where a page uses the component. Types vanish, and an actions file is where the way to the server is meant
 * to end, so neither is followed.
 *
 * @param graph      who imports whom
 * @param directive  the directive a file opens with: 'use client', 'use server' or none
 * @returns          each way as "a → b → c"; none when the wall holds
 */
export function waysToServer(graph: Graph, directive: (file: string) => string): string[] {
  const next = new Map(graph.map(({ source, dependencies }) => [source, dependencies]));
  const found: string[] = [];
  const follow = (way: string[], seen: Set<string>): void => {
    const here = way.at(-1) ?? '';
    if (SERVER_SIDE.test(here)) found.push(way.join(' → '));
    if (SERVER_SIDE.test(here) || seen.has(here) || directive(here) === 'use server') return;
    seen.add(here);
    for (const { resolved, dependencyTypes } of next.get(here) ?? []) {
      if (!dependencyTypes.includes('type-only')) follow([...way, resolved], seen);
    }
  };
  for (const { source } of graph) if (directive(source) === 'use client') follow([source], new Set());
  return found;
}
