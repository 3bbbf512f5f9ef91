import type { SuppressionKind } from '#core/alarms/life/suppression';

/** An alarm that calls nobody now. Instants in ISO, UTC. */
export interface SuppressedView {
  run: string;
  alarm: string;
  name: string;
  system: { key: string; name: string };
  kind: SuppressionKind;
  begunAt: string;
  until: string;
  by: string | null;
  owner: string | null;
  reason: string | null;
  state: string | null;
  active: string | null;
}

/** An alarm that may be kept from calling. Times in hours. */
export interface SuppressChoiceView {
  id: string;
  name: string;
  system: string;
  isNever: boolean;
  shelveH: number;
  outH: number;
}

/** What keeps an alarm from calling, and through whom. */
export function bySaid({ kind, by, owner, state }: SuppressedView): string {
  switch (kind) {
    case 'shelved':
      return `Shelved by ${by ?? 'somebody'}`;
    case 'by-design':
      return `Suppressed by design: ${(state ?? 'an operating state').replaceAll('-', ' ')}`;
    case 'out-of-service':
      return `Out of service, in the hands of ${owner ?? 'somebody'}`;
  }
}

/** Hours as people say them. */
export function hoursSaid(hours: number): string {
  if (hours >= 48 && hours % 24 === 0) return `${hours / 24} days`;
  return hours === 1 ? '1 hour' : `${hours} hours`;
}
