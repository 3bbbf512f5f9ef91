import { FACILITY_FORMAT, type Facility } from '../../../facility/facility';
import { DAYS } from '../../../facility/site';
import { entered, proven } from './proven';

/**
 * A small site with everything in order: a battery behind air and watch, somebody on duty or on call at every hour,
 * two rounds a day. Its one system is put in by `example`.
 */
export const SITE: Omit<Facility, 'systems'> = {
  format: FACILITY_FORMAT,
  site: {
    key: 'example',
    name: 'Example house',
    zone: 'Europe/London',
    powerCut: { means: 'portable generator in the yard', repairMin: entered(30) },
    watchdog: { afterMin: 15, answeredBy: 'rota', safeguard: 'outside-watch' },
  },
  rooms: [{ key: 'gallery', name: 'Gallery', temperatureC: entered(21), humidityPct: entered(55) }],
  circuits: [
    { key: 'pumps', name: 'Pumps', breakerA: entered(16), volts: entered(230), rcd: 'RCD 1', backedBy: [] },
    { key: 'heat', name: 'Heat', breakerA: entered(16), volts: entered(230), rcd: 'RCD 2', backedBy: [] },
    {
      key: 'air',
      name: 'Air',
      breakerA: entered(10),
      volts: entered(230),
      rcd: 'RCD 3',
      backedBy: ['ups'],
      upsMin: entered(240),
      upsSafeguard: 'battery',
    },
    {
      key: 'watch',
      name: 'Watch',
      breakerA: entered(10),
      volts: entered(230),
      rcd: 'RCD 4',
      backedBy: ['ups'],
      upsMin: entered(120),
      upsSafeguard: 'battery',
    },
  ],
  monitors: [
    { key: 'gateway', name: 'Gateway', kind: 'gateway', circuit: 'watch' },
    { key: 'router', name: 'Router', kind: 'router', circuit: 'watch' },
    { key: 'host', name: 'Holdfast host', kind: 'host', circuit: 'watch' },
  ],
  safeguards: [proven('battery', 'Batteries', 'standby-power'), proven('outside-watch', 'Outside watch', 'alarm')],
  people: [
    { key: 'first', name: 'First keeper', role: 'aquarist', travelMin: entered(25) },
    { key: 'second', name: 'Second keeper', role: 'lead', travelMin: entered(40) },
  ],
  shifts: [
    { key: 'day', kind: 'on-site', people: ['first'], days: [...DAYS], from: '08:00', to: '18:00' },
    { key: 'night', kind: 'on-call', people: ['second'], days: [...DAYS], from: '18:00', to: '08:00' },
  ],
  rounds: [
    {
      key: 'morning',
      name: 'Morning round',
      days: [...DAYS],
      at: '08:30',
      sees: ['equipment', 'temperature', 'level', 'salinity', 'oxygen', 'animals', 'floor'],
    },
    { key: 'evening', name: 'Evening round', days: [...DAYS], at: '17:00', sees: ['equipment', 'level', 'animals'] },
  ],
  profiles: [],
};
