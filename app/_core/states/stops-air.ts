import type { Equipment, EquipmentType, StateName, System } from '../facility/system';

/** What brings oxygen in while it runs. */
const BRINGS_OXYGEN: ReadonlySet<EquipmentType> = new Set([
  'skimmer',
  'air-blower',
  'circulation-pump',
  'return-pump',
  'filter',
]);
/** States so short that animals bear them. Common practice, no source. */
const PAUSES: ReadonlySet<StateName> = new Set(['feeding', 'backwash']);

/** Whether a plan has a piece of equipment off in a state. */
export function isOffIn({ plan }: Pick<Equipment, 'plan'>, state: StateName): boolean {
  return plan.states.some((line) => line.state === state && line.then === 'off');
}

/** What brings oxygen in and stands still in a state. */
export function airStoppedIn({ equipment }: Pick<System, 'equipment'>, state: StateName): Equipment[] {
  return equipment.filter((piece) => BRINGS_OXYGEN.has(piece.type) && isOffIn(piece, state));
}

/**
 * Whether the oxygen without what a state stops is to be looked at before it is begun: always in a treatment with a skimmer, for
 * most medicines stop that whatever a plan says, and in every state that lasts longer than a pause.
 */
export function mayStopAir(system: Pick<System, 'equipment'>, state: StateName): boolean {
  if (PAUSES.has(state)) return false;
  const hasSkimmer = state === 'treatment' && system.equipment.some(({ type }) => type === 'skimmer');
  return hasSkimmer || airStoppedIn(system, state).length > 0;
}
