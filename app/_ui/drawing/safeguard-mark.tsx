import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import { isOff, isTested, safeguardsOf } from '#core/plans/credit';
import style from './drawing.module.css';

/** Whether a safeguard, by key, is tested, untested or off on the day of the review. */
export type Proof = (safeguard: string | undefined) => 'tested' | 'untested' | 'off';

/** A safeguard on a piece of equipment: C cut-out, I interlock, R run limit; without a letter, whichever. */
export interface Mark {
  letter: 'C' | 'I' | 'R' | '';
  key: string;
  proof: ReturnType<Proof>;
}

/**
 * How far each safeguard of a system is proved.
 * @param on ISO date
 */
export function proofOf(facility: Facility, system: System, on: string): Proof {
  const known = new Map(safeguardsOf(facility, system).map((s) => [s.key, s]));
  return (key) => {
    const safeguard = key === undefined ? undefined : known.get(key);
    if (!safeguard) return 'untested';
    if (isOff(safeguard, on)) return 'off';
    return isTested(safeguard, on) ? 'tested' : 'untested';
  };
}

/** The safeguards in the plan of a piece of equipment. */
export function marksOf({ plan }: Equipment, proof: Proof): Mark[] {
  const limit = plan.regulation.kind === 'level' && plan.regulation.runLimitMin !== undefined ? plan.regulation : null;
  return [
    ...plan.cutOuts.map((line): Mark => ({ letter: 'C', key: line.safeguard, proof: proof(line.safeguard) })),
    ...plan.interlocks.map(
      (line, i): Mark => ({ letter: 'I', key: line.safeguard ?? String(i), proof: proof(line.safeguard) }),
    ),
    ...(limit
      ? [{ letter: 'R', key: limit.runLimitSafeguard ?? '', proof: proof(limit.runLimitSafeguard) } as const]
      : []),
  ];
}

/** The letter of a safeguard in its square: a whole line where it is tested, a broken one where not, struck out where off. */
export function SafeguardMark({ mark, x, y }: { mark: Mark; x: number; y: number }) {
  return (
    <g className={mark.proof === 'tested' ? style.mark : `${style.mark} ${style.untested}`}>
      <rect x={x - 7} y={y - 7} width="14" height="14" />
      <text x={x} y={y + 4} textAnchor="middle">
        {mark.letter}
      </text>
      {mark.proof === 'off' ? <path d={`M${x - 7} ${y + 7} ${x + 7} ${y - 7}`} stroke="currentColor" /> : null}
    </g>
  );
}
