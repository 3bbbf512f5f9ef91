import type { Circuit } from '#core/facility/site';
import type { System } from '#core/facility/system';
import { Strike } from './flow-lines';
import { fitted } from './layout';
import type { Struck } from './struck';
import { EquipmentSymbol } from './symbol';
import { CircuitLetter } from './tank-box';
import style from './drawing.module.css';

export const RAIL = 34;

interface RailsProps {
  circuits: Circuit[];
  system: System;
  struck: Struck;
  letters: ReadonlyMap<string, string>;
  y: number;
  width: number;
}

/** The electrical circuits as ruled lines, each with what hangs on it; a bracket joins those of one RCD group. */
export function Rails({ circuits, system, struck, letters, y, width }: RailsProps) {
  const name = Math.min(230, width * 0.5);
  if (circuits.length === 0) return null;
  return (
    <g>
      <text className={style.heading} x="6" y={y - 26}>
        Electrical circuits
      </text>
      {circuits.map((circuit, i) => {
        const at = y + RAIL * i;
        const hung = system.equipment.filter((e) => e.circuit === circuit.key);
        const dead = struck.circuits.has(circuit.key);
        const step = Math.min(34, (width - name - 40) / Math.max(1, hung.length));
        return (
          <g key={circuit.key} className={dead ? style.dead : undefined}>
            <CircuitLetter letter={letters.get(circuit.key) ?? ''} x={24} y={at} />
            <text className={style.device} x={38} y={at - 2}>
              {fitted(circuit.name, name - 44, 13)}
            </text>
            <text className={style.soft} x={38} y={at + 12}>
              {fitted(backing(circuit), name - 40, 12)}
            </text>
            <path className={style.rail} d={`M${name} ${at}H${width - 6}`} />
            {hung.map((e, k) => (
              <g key={e.key}>
                <circle className={style.hook} cx={name + 24 + step * k} cy={at} r="12" />
                <EquipmentSymbol className={style.symbol} type={e.type} x={name + 24 + step * k} y={at} />
              </g>
            ))}
            {dead ? <Strike x={name} y={at} /> : null}
          </g>
        );
      })}
      <Brackets circuits={circuits} y={y} />
    </g>
  );
}

/** What carries a circuit when the utility fails. */
function backing({ backedBy, rcd }: Circuit): string {
  const backed = backedBy.map((by) => (by === 'ups' ? 'battery' : 'generator')).join(', ');
  return [rcd === undefined ? 'no RCD' : `RCD ${rcd.replace(/^rcd-/, '')}`, backed || 'utility only'].join(', ');
}

function Brackets({ circuits, y }: { circuits: Circuit[]; y: number }) {
  const groups = new Map<string, number[]>();
  for (const [i, { rcd }] of circuits.entries())
    if (rcd !== undefined) groups.set(rcd, [...(groups.get(rcd) ?? []), i]);
  return (
    <>
      {[...groups].map(([rcd, at]) => {
        const from = y + RAIL * Math.min(...at) - 8;
        const to = y + RAIL * Math.max(...at) + 8;
        return <path key={rcd} className={style.bracket} d={`M12 ${from}H6V${to}H12`} />;
      })}
    </>
  );
}
