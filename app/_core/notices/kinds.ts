/**
 * What this room knows: work by others on a site that reaches its systems, what it reaches them through, and what to do.
 * What it leaves out: who works, and when, which people enter.
 * Where the numbers come from: there are none; what to do is common practice, no source.
 */
import type { EquipmentType, System } from '../facility/system';
import table from './kinds.json';

/** The kinds of work. */
export const NOTICE_KINDS = [
  'painting',
  'pest-control',
  'fire-panel',
  'electrical',
  'water-mains',
  'building',
  'other',
] as const;

/** What is usual for a kind of work. */
export interface NoticeWords {
  name: string;
  /** Types of equipment through which it reaches the water. */
  affects: readonly EquipmentType[];
  todo: string;
}

/** What is usual for a kind of work; of one nobody knows, what is of any. */
export function noticeWords(kind: string): NoticeWords {
  const { name, affects, todo } = table.find((one) => one.kind === kind) ?? { name: kind, affects: [], todo: '' };
  return { name, affects: affects as readonly EquipmentType[], todo };
}

/** The equipment through which work reaches some systems, by system. @param keys   of the systems it reaches; none: all */
export function reachedBy(
  systems: readonly System[],
  kind: string,
  keys: readonly string[],
): { system: string; equipment: string[] }[] {
  const { affects } = noticeWords(kind);
  return systems
    .filter(({ key }) => keys.length === 0 || keys.includes(key))
    .map(({ name, equipment }) => ({
      system: name,
      equipment: equipment.filter(({ type }) => affects.includes(type)).map((piece) => piece.name),
    }));
}
