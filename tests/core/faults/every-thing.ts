import type { Facility } from '#core/facility/facility';
import type { Equipment, EquipmentType } from '#core/facility/system';
import { airBlower, chiller, drainValve, filter, heater, plan, topOff } from '../../_support/build-equipment';
import { circuit, facility, site } from '../../_support/build-facility';
import { alarm, sensor, stock, system, tank } from '../../_support/build-system';
import { entered } from '../../_support/given';

const HOURS = { kind: 'hours', from: '10:00', to: '20:00', by: 'controller' } as const;
const saltAlarm = alarm({
  key: 'salt-low',
  name: 'Salt low',
  on: { kind: 'sensor', sensor: 'sump-salinity', below: 33 },
});
const wattsAlarm = alarm({
  key: 'watts-high',
  name: 'Watts high',
  on: { kind: 'sensor', sensor: 'heater-1-watts', above: 170 },
});
/** Held back by the pH of the sump. */
const BY_PH = plan({
  regulation: HOURS,
  interlocks: [{ when: { kind: 'sensor', sensor: 'sump-ph', below: 7.8 }, then: 'off', by: 'controller' }],
});

function more(type: EquipmentType, given: Partial<Equipment> = {}): Equipment {
  return { key: type, name: type, type, tank: 'sump', circuit: 'heat', plan: plan(), ...given };
}

/** A site on which every failure mode finds something to befall. */
export function everyThing(): Facility {
  const base = facility();
  const reef = system();
  return facility({
    site: site({ generator: { safeguard: 'battery' }, mains: { oxidantMgL: entered(0.8) } }),
    circuits: [
      ...base.circuits,
      circuit({ key: 'spare', name: 'Spare', rcd: 'rcd-1' }),
      circuit({ key: 'essential', name: 'Essential', rcd: 'rcd-9', backedBy: ['generator'] }),
    ],
    systems: [
      system({
        kind: 'ray',
        tanks: [...reef.tanks, tank({ key: 'den', name: 'Den', returnShare: 0.2 })],
        equipment: [
          ...reef.equipment.filter(({ type }) => type !== 'air-blower'),
          airBlower({
            stones: [
              { tank: 'display', count: 1 },
              { tank: 'den', count: 1 },
            ],
          }),
          heater({ key: 'loop', name: 'Loop', ratedW: 8000 }),
          chiller(),
          drainValve(),
          filter(),
          topOff({ key: 'fill', name: 'Fill', source: 'mains', plan: plan() }),
          more('light', { plan: plan({ regulation: HOURS }) }),
          more('uv', { circuit: 'essential' }),
          more('ozone', { ozoneGPerH: entered(0.1) }),
          more('doser', { source: 'reservoir', flowLPerH: entered(1), dosesMmolPerL: entered(40), plan: BY_PH }),
          more('co2', { co2GPerH: entered(2), plan: BY_PH }),
          more('feeder', { hopperG: entered(200), plan: plan({ regulation: HOURS }) }),
          more('supply', { source: 'mains', flowLPerH: entered(20), plan: plan({ regulation: HOURS }) }),
          more('dechlorinator', { removes: entered(0.99) }),
        ],
        sensors: [...reef.sensors, sensor({ key: 'sump-ph', name: 'Sump pH', quantity: 'ph', accuracy: 0.1 })],
        alarms: [...reef.alarms, saltAlarm, wattsAlarm],
        stock: [...reef.stock, stock({ key: 'octopus', group: 'Common octopus', tank: 'den', count: 1 })],
        states: [...reef.states, { name: 'treatment', endsBy: 'person' }, { name: 'backwash', endsBy: 'person' }],
      }),
    ],
  });
}
