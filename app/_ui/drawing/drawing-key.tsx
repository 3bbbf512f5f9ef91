import type { ReactNode } from 'react';
import type { EquipmentType, System } from '#core/facility/system';
import { EQUIPMENT_WORDS } from '../words/kinds';
import { Strike } from './flow-lines';
import { type Mark, marksOf, SafeguardMark } from './safeguard-mark';
import { EquipmentSymbol } from './symbol';
import style from './drawing.module.css';

const LETTERS: Record<Mark['letter'], string> = { '': '', C: 'cut-out', I: 'interlock', R: 'run limit' };
const PROOFS: { proof: Mark['proof']; says: string }[] = [
  { proof: 'untested', says: 'untested' },
  { proof: 'off', says: 'off' },
];

/** What the signs of a drawing mean. */
export function DrawingKey({ system }: { system: System }) {
  const types = [...new Set(system.equipment.map((e) => e.type))];
  const letters = [
    ...new Set(system.equipment.flatMap((e) => marksOf(e, () => 'tested').map((mark) => mark.letter))),
  ].sort();
  return (
    <ul className={style.key} aria-label="What the signs mean">
      {types.map((type: EquipmentType) => (
        <Entry key={type} says={EQUIPMENT_WORDS[type]}>
          <EquipmentSymbol type={type} x={10} y={10} />
        </Entry>
      ))}
      {letters.map((letter) => (
        <Entry key={letter} says={LETTERS[letter]}>
          <SafeguardMark mark={{ letter, key: '', proof: 'tested' }} x={10} y={10} />
        </Entry>
      ))}
      {letters.length > 0
        ? PROOFS.map(({ proof, says }) => (
            <Entry key={proof} says={says}>
              <SafeguardMark mark={{ letter: '', key: '', proof }} x={10} y={10} />
            </Entry>
          ))
        : null}
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
