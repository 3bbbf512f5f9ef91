import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getPlan, getPlanShape } from '#server/plans/get-plan';

/** The parts of the address of a plan, as the browser sent them. */
export interface PlanAddress {
  site: string;
  system: string;
  equipment: string;
}

const asked = ask(getPlanShape, getPlan);
const once = cache((site: string, system: string, equipment: string) => asked({ site, system, equipment }));

/** A plan by its address, asked for once a request. */
export function askPlan({ site, system, equipment }: PlanAddress) {
  return once(decodeURIComponent(site), decodeURIComponent(system), decodeURIComponent(equipment));
}
