import type { ReactNode } from 'react';
import type { EquipmentType, System } from '#core/facility/system';
import { EQUIPMENT_WORDS } from '../words/kinds';
import { Strike } from './flow-lines';
import { type Mark, SafeguardMark } from './safeguard-mark';
import { EquipmentSymbol } from './symbol';
import style from './drawing.module.css';

const MARKS: { mark: Mark; says: string }[] = [
  { mark: { letter: 'C', key: '', proof: 'tested' }, says: 'cut-out, tested' },
  { mark: { letter: 'I', key: '', proof: 'untested' }, says: 'interlock, untested' },
  { mark: { letter: 'R', key: '', proof: 'off' }, says: 'run limit, off' },
];

/** What the signs of a drawing mean. */
export function DrawingKey({ system }: { system: System }) {
  const types = [...new Set(system.equipment.map((e) => e.type))];
  return (
    <ul className={style.key} aria-label="What the signs mean">
      {types.map((type: EquipmentType) => (
        <Entry key={type} says={EQUIPMENT_WORDS[type]}>
          <EquipmentSymbol type={type} x={10} y={10} />
        </Entry>
      ))}
      {MARKS.map(({ mark, says }) => (
        <Entry key={mark.letter} says={says}>
          <SafeguardMark mark={mark} x={10} y={10} />
        </Entry>
      ))}
      <Entry says="fails in the fault under view">
        <Strike x={10} y={10} />
      </Entry>
      <Entry says="pumped">
        <path className={style.flow} d="M0 10H20" />
      </Entry>
      <Entry says="by gravity">
        <path className={style.gravity} d="M0 10H20" />
      </Entry>
    </ul>
  );
}

function Entry({ says, children }: { says: string; children: ReactNode }) {
  return (
    <li>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        {children}
      </svg>
      {says}
    </li>
  );
}
