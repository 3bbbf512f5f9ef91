import type { Facility } from '#core/facility/facility';
import { SYSTEM_KINDS } from '#core/facility/system';
import { KEEPING_ROLES, type StartAnswers } from '#core/start/answers';
import fc from 'fast-check';

const whole = (min: number, max: number) => fc.integer({ min, max });
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
const by = fc.constantFrom('hard-wired', 'controller', 'person');
const litres = whole(20, 2000);
const depthMm = whole(150, 1500);
const flowLPerH = whole(200, 9000);

/** Any answers a person could give at this site. */
export function anyAnswers(site: Facility): fc.Arbitrary<StartAnswers> {
  const circuit = maybe(fc.constantFrom(...site.circuits.map(({ key }) => key)));
  const what = fc.record({
    name: fc.constantFrom('Reef 1', 'Бассейн', 'Tank “left”'),
    kind: fc.constantFrom(...SYSTEM_KINDS),
    room: fc.constantFrom(...site.rooms.map(({ key }) => key)),
    salinity: fc.constantFrom(0, 12, 35),
  });
  const tanks = fc.record({
    role: fc.constantFrom(...KEEPING_ROLES),
    count: whole(1, 3),
    volumeL: litres,
    depthMm,
    cover: fc.constantFrom('open', 'lidded'),
  });
  const sump = maybe(fc.record({ volumeL: litres, depthMm, pumps: whole(1, 2), flowLPerH }));
  const power = fc.record({ heat: circuit, pumps: circuit, air: circuit });
  return (
    fc
      .record({
        what,
        tanks,
        sump,
        heat: maybe(anyHeat()),
        movement: anyMovement(),
        topOff: maybe(anyTopOff()),
        animals: anyAnimals(),
        power,
        watch: maybe(anyWatch(site)),
      })
      // As JSON has it: what was left out is not there.
      .map((given) => JSON.parse(JSON.stringify(given)) as StartAnswers)
  );
}

function anyHeat() {
  const cutOut = fc.record({ aboveC: fc.constant(31), reset: fc.constantFrom('manual', 'automatic') });
  const heaters = fc.record({ count: whole(1, 3), eachW: whole(50, 800), cutOut: maybe(cutOut) });
  const chiller = maybe(fc.record({ coolingW: whole(100, 2000) }));
  return fc.record({ keptAtC: whole(8, 28), by, heaters, chiller });
}

function anyMovement() {
  return fc.record({
    circulation: maybe(fc.record({ eachTank: whole(1, 2), flowLPerH })),
    air: maybe(fc.record({ stonesEachTank: whole(1, 6) })),
    skimmer: fc.constantFrom('yes', 'no'),
  });
}

function anyTopOff() {
  const shared = { by, runLimitMin: maybe(whole(1, 30)) };
  return fc.oneof(
    fc.record({ from: fc.constant('mains'), ...shared }),
    fc.record({ from: fc.constant('reservoir'), holdsL: litres, ...shared }),
  );
}

function anyAnimals() {
  const group = fc.constantFrom('Fish', 'fish', 'Krebse & Co', '魚');
  const one = fc.record({ group, count: whole(1, 50), eachG: whole(1, 900) });
  return fc.uniqueArray(one, { minLength: 1, maxLength: 3, selector: (animals) => animals.group });
}

function anyWatch({ monitors }: Facility) {
  const gateways = monitors.filter(({ kind }) => kind === 'gateway').map(({ key }) => key);
  return fc.record({
    aboveC: fc.constant(29),
    belowC: maybe(fc.constant(7)),
    probe: fc.constant('own'),
    gateway: maybe(fc.constantFrom(...gateways)),
    answeredBy: fc.constantFrom('rota', 'nobody'),
  });
}
