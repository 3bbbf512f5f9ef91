import { fault as gatewaySilent } from '../../faults/modes/gateway-silent';
import { coursesOf } from '../courses';
import { gravestOutcome } from '../gravest';
import { outcomesOf } from '../outcome';
import { repairTime } from '../repair';
import type { Combination } from '../study';
import { combined, faultPart } from './combination';
import { prime } from './dead-safeguards';
import { frequencyOf } from './frequency';
import { jointly } from './joint';
import type { Look } from './look';

/**
 * One fault case with each gateway, router and host silent in turn: what tells of it travels one way. The water takes the same
 * course, so no last chance is looked for again; only what is raised differs.
 * @returns those that come out otherwise than the fault alone
 */
export function silencedOf(look: Look, { subject, case: c }: Look['tried'][number]): Combination[] {
  const { context, view, facility } = look;
  if (subject.fault.id === gatewaySilent.id) return [];
  const alone = gravestOutcome(c.claimed);
  return facility.monitors.flatMap(({ key, name }): Combination[] => {
    const silent = { fault: gatewaySilent, thing: { kind: 'gateway' as const, key, name }, state: subject.state };
    const joint = jointly([subject, silent]);
    const courses = coursesOf(context, view, joint, 'claimed');
    prime(courses, c.claimed);
    const repairS = repairTime(context, view, subject);
    const outcomes = outcomesOf(context, view, joint, courses, 'claimed', repairS);
    const judgement = { verdict: outcomes[0]?.verdict ?? ('holds' as const), outcomes, acted: [] };
    const worst = gravestOutcome(judgement);
    if (outcomes.length === 0 || (worst.rank === alone.rank && worst.spareS === alone.spareS)) return [];
    const parts = [faultPart(subject), faultPart(silent)];
    return [
      combined({
        kind: 'common-cause',
        state: subject.state,
        parts,
        because: `what tells of it travels through ${name}`,
        alone: alone.verdict,
        judgement,
        perYear: frequencyOf(look, parts),
      }),
    ];
  });
}
