import { useId } from 'react';
import type { Facility } from '#core/facility/facility';
import type { Circuit } from '#core/facility/site';
import type { System } from '#core/facility/system';
import type { Custom } from '#core/units/shown';
import { FlowLines } from './flow-lines';
import { layoutOf, widthFor } from './layout';
import { RAIL, Rails } from './rails';
import { DESK, TwoWidths } from '../plot/two-widths';
import { DrawingKey } from './drawing-key';
import { proofOf } from './safeguard-mark';
import { type FaultInView, struckBy } from './struck';
import { TankBox } from './tank-box';
import style from './drawing.module.css';

interface SystemDrawingProps {
  facility: Facility;
  system: System;
  /** The fault under view; null when none is. */
  fault: FaultInView | null;
  units: Custom;
  /** ISO date the tests are judged on. */
  on: string;
}

/** Circuits that feed a system, those of one RCD group together. */
export function circuitsOf(facility: Facility, system: System): Circuit[] {
  const used = new Set(system.equipment.map((e) => e.circuit));
  return facility.circuits
    .filter((c) => used.has(c.key))
    .sort((a, b) => ((a.rcd ?? '') < (b.rcd ?? '') ? -1 : (a.rcd ?? '') > (b.rcd ?? '') ? 1 : 0));
}

/** A ruled line drawing of a system made from its data, once for a desk and once for a phone. */
export function SystemDrawing(props: SystemDrawingProps) {
  return (
    <>
      <TwoWidths desk={widthFor(props.system, DESK)} draw={(width) => <Drawing {...props} width={width} />} />
      <DrawingKey system={props.system} />
    </>
  );
}

function Drawing({ facility, system, fault, units, on, width }: SystemDrawingProps & { width: number }) {
  const id = useId();
  const layout = layoutOf(system, width);
  const circuits = circuitsOf(facility, system);
  const letters = new Map(circuits.map((c, i) => [c.key, String.fromCharCode(65 + (i % 26))]));
  const struck = struckBy(facility, system, fault);
  const railsY = layout.height + 34;
  const height = railsY + RAIL * circuits.length - 8;
  const all = { system, struck, letters };
  const arrow = `url(#${id}a)`;
  return (
    <svg
      className={style.drawing}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={id}
    >
      <title
        id={id}
      >{`${system.name}: tanks, flow and equipment on their circuits. The same stands in a table.`}</title>
      <defs>
        <marker id={`${id}a`} viewBox="0 0 8 8" refX="7" refY="4" markerWidth="8" markerHeight="8" {...MARKER}>
          <path d="M0 0 8 4 0 8Z" fill="context-stroke" />
        </marker>
      </defs>
      <FlowLines
        layout={layout}
        width={width}
        blocked={fault?.thing.kind === 'tank' ? fault.thing.key : null}
        arrow={arrow}
      />
      {layout.boxes.map((box) => (
        <TankBox key={box.tank.key} box={box} units={units} proof={proofOf(facility, system, on)} {...all} />
      ))}
      <Rails circuits={circuits} y={railsY} width={width} {...all} />
    </svg>
  );
}

/** An arrow head keeps its size whatever the line, and points along it. */
const MARKER = { orient: 'auto', markerUnits: 'userSpaceOnUse' };
