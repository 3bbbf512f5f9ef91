import type { EquipmentType } from '#core/facility/system';

/** Outlines of the kinds of equipment, in a square of 16 about the origin. */
const OUTLINES: Record<EquipmentType, string> = {
  heater: 'M-8 0h2l2-5 3 10 3-10 3 10 1-5h2',
  chiller: 'M0-7V7M-6-3.5 6 3.5M-6 3.5 6-3.5M-2.5-6 0-4l2.5-2M-2.5 6 0 4l2.5 2',
  'return-pump': 'M-7 0a7 7 0 1 0 14 0a7 7 0 1 0-14 0M-4 5.5V-5.5L7 0Z',
  'circulation-pump': 'M-7 0a7 7 0 1 0 14 0a7 7 0 1 0-14 0M0 0C-2-5-6-3-5 0C-4 3-2 2 0 0C2 5 6 3 5 0C4-3 2-2 0 0Z',
  skimmer: 'M-6-7H6L3-2V7H-3V-2ZM-1 4h.1M1 1h.1M-1-1h.1',
  'air-blower':
    'M-3 5a2 2 0 1 0 4 0a2 2 0 1 0-4 0M0-1a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0M-5-5a2 2 0 1 0 4 0a2 2 0 1 0-4 0',
  'top-off': 'M0-7C3-2 5 0 5 3A5 5 0 0 1-5 3C-5 0-3-2 0-7Z',
  filter: 'M-6-7H6V7H-6ZM-6-2H6M-3 1h.1M0 3h.1M3 1h.1M-3 5h.1M3 5h.1',
  'drain-valve': 'M-7-5V5L7-5V5Z',
  light: 'M-5 0A5 5 0 0 1 5 0ZM-5 3l-1.5 3M0 3v4M5 3l1.5 3',
  uv: 'M-8-4C-5-8-3 0 0-4S5-8 8-4M-8 4C-5 0-3 8 0 4S5 0 8 4',
  ozone: 'M-4 3a3 3 0 1 0 .1 0M4 3a3 3 0 1 0 .1 0M0-3a3 3 0 1 0 .1 0',
  doser: 'M-4 -5h8v10h-8zM0 5v4',
  co2: 'M-3 -6h6v12h-6zM-3 -2h6',
  feeder: 'M-5 -5h10l-3 10h-4z',
  supply: 'M-7 0h14M3 -4l4 4l-4 4',
  dechlorinator: 'M-6 -4h12v8h-12zM-2 -4v8M2 -4v8',
  other: 'M-6-6H6V6H-6Z',
};

/** The symbol of a kind of equipment, drawn about a point. */
export function EquipmentSymbol({
  type,
  x,
  y,
  className,
}: {
  type: EquipmentType;
  x: number;
  y: number;
  className?: string;
}) {
  return (
    <path
      className={className}
      d={OUTLINES[type]}
      transform={`translate(${x} ${y})`}
      fill="none"
      stroke="currentColor"
      strokeWidth="1.5"
      strokeLinejoin="round"
      strokeLinecap="round"
    />
  );
}
