import type { Combination } from '../study';
import { CLASSES } from '../outcome';
import { gravity } from '../verdict';
import { CAUSES } from './causes/catalogue';
import { combined } from './combination';
import { deadSafeguardsOf } from './dead-safeguards';
import { frequencyOf } from './frequency';
import type { Look } from './look';
import { silencedOf } from './silenced';
import { twoSteps } from './two-step';

/**
 * Everything that is tried with more than one thing wrong: each fault case with one safeguard dead and with each way of its
 * alarms silent, what fails together for one cause, and what fails after another.
 * @param told called as it goes on, with how many fault cases are done
 * @returns gravest first, with how many were tried
 */
export function combinationsOf(
  look: Look,
  told: (done: number) => void,
): { combinations: Combination[]; tried: number } {
  let tried = 0;
  const combinations = look.tried.flatMap((one, at) => {
    const dead = deadSafeguardsOf(look, one);
    const silenced = dead.isTold ? silencedOf(look, one) : [];
    tried += dead.tried + (dead.isTold ? look.facility.monitors.length : 0);
    told(at + 1);
    return [...dead.combinations, ...silenced];
  });
  const common = CAUSES.flatMap((cause) => cause(look)).map(({ judge, ...shared }) =>
    combined({ kind: 'common-cause', ...shared, judgement: judge(), perYear: frequencyOf(look, shared.parts) }),
  );
  const steps = twoSteps(look);
  tried += common.length + steps.length;
  return { combinations: inOrder([...combinations, ...common, ...steps]), tried };
}

/** By whom they harm, how surely, and how little time there is. */
function inOrder(combinations: readonly Combination[]): Combination[] {
  const befalls = ({ harm }: Combination) => (harm ? CLASSES.indexOf(harm.class) : CLASSES.length);
  const spare = ({ harm, spareS }: Combination) =>
    spareS ?? (harm ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
  const nearer = (a: number, b: number) => (a === b ? 0 : a - b);
  return [...combinations].sort(
    (a, b) =>
      befalls(a) - befalls(b) ||
      gravity(a.verdict) - gravity(b.verdict) ||
      nearer(spare(a), spare(b)) ||
      (a.id < b.id ? -1 : 1),
  );
}
