import type { Equipment, Sensor, System } from '#core/facility/system';
import type { Custom } from '#core/units/shown';
import { figure } from '../units/figures';
import { Strike } from './flow-lines';
import { type Box, fitted, LINE, sensesIn } from './layout';
import { type Mark, marksOf, type Proof, SafeguardMark } from './safeguard-mark';
import { EquipmentSymbol } from './symbol';
import type { Struck } from './struck';
import style from './drawing.module.css';

interface TankBoxProps {
  box: Box;
  system: System;
  struck: Struck;
  units: Custom;
  /** Letter of each circuit. */
  letters: ReadonlyMap<string, string>;
  proof: Proof;
}

/** One body of water: its name and size, who lives in it, and what stands in it. */
export function TankBox({ box, system, struck, units, letters, proof }: TankBoxProps) {
  const { tank, x, y, width, height } = box;
  const equipment = system.equipment.filter((e) => e.tank === tank.key);
  const stock = system.stock.filter((s) => s.tank === tank.key);
  const stones = system.equipment.filter((e) => e.tank !== tank.key && e.stones?.some((s) => s.tank === tank.key));
  const volume = tank.volumeL.value === null ? 'volume unknown' : figure(units, 'volume', tank.volumeL.value);
  const line = (i: number) => y + 58 + LINE * i;
  const air = stock.length + equipment.length;
  return (
    <g>
      <rect className={style.water} x={x} y={y + 6} width={width} height={height - 6} />
      <path className={style.walls} d={`M${x} ${y - 2}V${y + height}H${x + width}V${y - 2}`} />
      <path className={style.surface} d={`M${x} ${y + 6}H${x + width}`} />
      <text className={style.tankName} x={x + 8} y={y + 24}>
        {fitted(tank.name, width - 16, 14)}
      </text>
      <text className={style.soft} x={x + 8} y={y + 40}>
        {fitted(tank.role === 'sump' || tank.role === 'reservoir' ? volume : `${tank.role}, ${volume}`, width - 16, 12)}
      </text>
      {stock.map((s, i) => (
        <text key={s.key} className={style.soft} x={x + 8} y={line(i) + 4}>
          {fitted(`${s.count} × ${s.group}`, width - 16, 12)}
        </text>
      ))}
      {equipment.map((e, i) => (
        <Device
          key={e.key}
          equipment={e}
          x={x}
          y={line(stock.length + i)}
          width={width}
          struck={struck}
          letter={letters.get(e.circuit ?? '')}
          marks={marksOf(e, proof)}
        />
      ))}
      {stones.map((e, i) => (
        <g key={e.key}>
          <EquipmentSymbol className={style.symbol} type="air-blower" x={x + 18} y={line(air + i)} />
          <text className={style.soft} x={x + 34} y={line(air + i) + 4}>
            {fitted(`air from ${e.name}`, width - 42, 12)}
          </text>
        </g>
      ))}
      <Senses sensors={sensesIn(system, tank)} struck={struck} x={x} y={line(air + stones.length)} width={width} />
    </g>
  );
}

function Senses({
  sensors,
  struck,
  x,
  y,
  width,
}: {
  sensors: Sensor[];
  struck: Struck;
  x: number;
  y: number;
  width: number;
}) {
  if (sensors.length === 0) return null;
  const failing = sensors.find((s) => struck.thing?.kind === 'sensor' && struck.thing.key === s.key);
  const words = [...new Set(sensors.map((s) => s.quantity))].join(', ');
  return (
    <g>
      <path className={style.probe} d={`M${x + 13} ${y - 5}h10l-5 9Z`} />
      {failing ? <Strike x={x + 18} y={y} /> : null}
      <text className={failing ? style.fails : style.soft} x={x + 34} y={y + 4}>
        {fitted(failing ? `${failing.name}: fails here` : words, width - 40, failing ? 13 : 12)}
      </text>
    </g>
  );
}

interface DeviceProps {
  equipment: Equipment;
  x: number;
  y: number;
  width: number;
  struck: Struck;
  letter: string | undefined;
  marks: Mark[];
}

function Device({ equipment, x, y, width, struck, letter, marks }: DeviceProps) {
  const { key, name, type } = equipment;
  const fails = struck.thing?.kind === 'equipment' && struck.thing.key === key;
  return (
    <g className={struck.equipment.has(key) ? style.dead : undefined}>
      <EquipmentSymbol className={style.symbol} type={type} x={x + 18} y={y} />
      {fails ? <Strike x={x + 18} y={y} /> : null}
      <text className={fails ? style.fails : style.device} x={x + 34} y={y + 4}>
        {fitted(fails ? `${name}: fails here` : name, width - 34 - (letter ? 26 : 6) - 17 * marks.length, 13)}
      </text>
      {marks.map((mark, i) => (
        <SafeguardMark
          key={`${mark.letter}${mark.key}`}
          mark={mark}
          x={x + width - 14 - (letter ? 19 : 0) - 17 * (marks.length - 1 - i)}
          y={y}
        />
      ))}
      {letter ? <CircuitLetter letter={letter} x={x + width - 14} y={y} /> : null}
    </g>
  );
}

/** The letter of an electrical circuit in its ring. */
export function CircuitLetter({ letter, x, y }: { letter: string; x: number; y: number }) {
  return (
    <g className={style.letter}>
      <circle cx={x} cy={y} r="8" />
      <text x={x} y={y + 4} textAnchor="middle">
        {letter}
      </text>
    </g>
  );
}
