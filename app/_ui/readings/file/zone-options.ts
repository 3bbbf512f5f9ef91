/** Differences from UTC in use, in quarters of an hour where they are. */
const DIFFERENCES = [
  ...Array.from({ length: 27 }, (_, i) => (i - 12) * 60),
  ...[-570, -210, 210, 270, 330, 345, 390, 525, 570, 630, 765],
].sort((a, b) => a - b);

/**
 * Zones that the clock of a logger can have run by.
 *
 * @param site     zone of the site, which stands first
 * @param chosen   one that must be among them
 */
export function zoneOptions(site: string, chosen: string | null): (readonly [string, string])[] {
  const fixed = DIFFERENCES.filter((minutes) => minutes !== 0).map(written);
  const first: (readonly [string, string])[] = [
    [site, `the clocks of the site, ${site}`],
    ['UTC', 'UTC'],
    ...fixed.map((zone) => [zone, `UTC${zone} all year`] as const),
  ];
  const more = [...Intl.supportedValuesOf('timeZone'), ...(chosen === null ? [] : [chosen])];
  const known = new Set(first.map(([zone]) => zone));
  return [...first, ...[...new Set(more)].filter((zone) => !known.has(zone)).map((zone) => [zone, zone] as const)];
}

function written(minutes: number): string {
  const two = (count: number) => String(count).padStart(2, '0');
  const ahead = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
}
