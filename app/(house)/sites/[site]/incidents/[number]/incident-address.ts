/** The part of an address that names an incident, as the browser sent it. */
export interface IncidentAddress {
  site: string;
  number: string;
}

/** Where an incident is, out of its address. */
export function placeIn({ site, number }: IncidentAddress): { site: string; number: string } {
  return { site: decodeURIComponent(site), number };
}
