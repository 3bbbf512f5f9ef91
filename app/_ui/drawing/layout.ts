import type { Sensor, System, Tank } from '#core/facility/system';

/** A body of water as a box of the drawing, px. */
export interface Box {
  tank: Tank;
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Where the boxes and the lines between them stand, px. */
export interface Layout {
  boxes: Box[];
  sump: Box | null;
  reservoirs: Box[];
  /** Rows of tanks above the sump. */
  rows: Box[][];
  height: number;
}

export const LINE = 20;
const HEAD = 48;
const GAP = 18;
/** Room for the lines along the edges. */
const EDGE = 16;
/** Room for the lines between rows. */
const BETWEEN = 30;
const NARROWEST = 138;
const WIDEST = 300;
const RESERVOIR = 196;
/** The rails below need this much whatever stands above, px. */
const RAILS = 620;

/** How many lines a tank's box holds under its head. */
export function linesOf(system: System, tank: Tank): number {
  const equipment = system.equipment.filter((e) => e.tank === tank.key).length;
  const stock = system.stock.filter((s) => s.tank === tank.key).length;
  const stones = system.equipment.filter(
    (e) => e.tank !== tank.key && e.stones?.some((s) => s.tank === tank.key),
  ).length;
  return equipment + stock + stones + (sensesIn(system, tank).length > 0 ? 1 : 0);
}

/** Sensors that sit in a tank. */
export function sensesIn(system: System, tank: Tank): Sensor[] {
  return system.sensors.filter((sensor) => sensor.tank === tank.key);
}

/** Width in which a system is drawn without stretching its lines, px, at most `most`. */
export function widthFor(system: System, most: number): number {
  const above = system.tanks.filter((tank) => tank.role !== 'sump' && tank.role !== 'reservoir').length;
  return Math.min(most, Math.max(RAILS, above * (WIDEST + GAP) + 4 * EDGE));
}

/**
 * Place a system's tanks: the stocked ones in rows above, the sump with its reservoirs below.
 * @param width px to draw in
 */
export function layoutOf(system: System, width: number): Layout {
  const sump = system.tanks.find((tank) => tank.role === 'sump');
  const reservoirs = system.tanks.filter((tank) => tank.role === 'reservoir');
  const above = system.tanks.filter((tank) => tank !== sump && tank.role !== 'reservoir');
  const perRow = Math.max(1, Math.min(above.length, Math.floor((width - 2 * EDGE + GAP) / (NARROWEST + GAP))));
  const rows: Box[][] = [];
  let y = BETWEEN;
  for (let i = 0; i < above.length; i += perRow) {
    const row = placeRow(system, above.slice(i, i + perRow), perRow, width, y);
    rows.push(row);
    y += Math.max(...row.map((box) => box.height)) + 2 * BETWEEN;
  }
  const below = placeBelow(system, sump, reservoirs, width, y);
  return {
    boxes: [...rows.flat(), ...below],
    sump: below.find((box) => box.tank === sump) ?? null,
    reservoirs: below.filter((box) => box.tank !== sump),
    rows,
    height: below.length > 0 ? y + Math.max(...below.map((box) => box.height)) + GAP : y - BETWEEN,
  };
}

function placeRow(system: System, tanks: Tank[], places: number, width: number, y: number): Box[] {
  const room = (width - 2 * EDGE - GAP * (places - 1)) / places;
  const each = Math.min(WIDEST, room);
  const left = EDGE + (width - 2 * EDGE - each * tanks.length - GAP * (tanks.length - 1)) / 2;
  const height = HEAD + LINE * Math.max(1, ...tanks.map((tank) => linesOf(system, tank))) + 8;
  return tanks.map((tank, i) => ({ tank, x: left + i * (each + GAP), y, width: each, height }));
}

/** The sump in the middle, its reservoirs small at its left. */
function placeBelow(system: System, sump: Tank | undefined, reservoirs: Tank[], width: number, y: number): Box[] {
  const [box] = sump ? placeRow(system, [sump], 1, width, y) : [];
  const small = Math.min(RESERVOIR, (width - 2 * EDGE) * 0.34);
  const shift = box && reservoirs.length > 0 ? Math.max(0, EDGE + reservoirs.length * (small + GAP) - box.x) : 0;
  const moved = box ? { ...box, x: box.x + shift, width: Math.min(box.width, width - 2 * EDGE - shift) } : undefined;
  const right = moved ? moved.x : width / 2;
  const placed = reservoirs.map((tank, i) => ({
    tank,
    x: right - (reservoirs.length - i) * (small + GAP),
    y,
    width: small,
    height: HEAD + LINE * linesOf(system, tank) + 4,
  }));
  return moved ? [...placed, moved] : placed;
}

/** A text cut to fit a width. @param size px of the letters */
export function fitted(text: string, width: number, size: number): string {
  const letters = Math.floor(width / (size * 0.47));
  return text.length <= letters ? text : `${text.slice(0, Math.max(1, letters - 1)).trimEnd()}…`;
}
