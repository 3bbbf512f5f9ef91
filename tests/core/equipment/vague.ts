import type { Facility } from '#core/facility/facility';

/** The same site with every figure known only to a quarter, up or down. */
export function vague(site: Facility): Facility {
  return blur(site) as Facility;
}

function blur(part: unknown): unknown {
  if (Array.isArray(part)) return part.map(blur);
  if (typeof part !== 'object' || part === null) return part;
  const entries = Object.entries(part);
  const value = 'origin' in part && 'value' in part ? part.value : null;
  if (typeof value === 'number') return { ...part, low: value / 1.25, high: value * 1.25 };
  return Object.fromEntries(entries.map(([name, one]) => [name, blur(one)]));
}
