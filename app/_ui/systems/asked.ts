/** What an address may ask of the table of systems. */
export const ASKS = ['sort', 'find', 'site', 'kind', 'verdict', 'show'] as const;

/** Whether an address asks anything of the table. @param search   what stands behind the question mark */
export function asksOfTable(search: Readonly<Record<string, unknown>>): boolean {
  return ASKS.some((name) => search[name] !== undefined);
}
