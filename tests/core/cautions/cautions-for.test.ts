import { CAUTIONS, cautionsFor, cautionText, type Place } from '#core/cautions/cautions-for';
import { FAULTS } from '#core/faults/catalogue';
import { EQUIPMENT_TYPES, OPERATING_STATES, SYSTEM_KINDS } from '#core/facility/system';
import { isRemedy } from '#core/review/remedies';
import { expect, test } from 'vitest';

const keys = (place: Place) => cautionsFor(place).map(({ key }) => key);

test('every caution has its own key, whole sentences, a source, and a place where it is said', () => {
  expect(CAUTIONS.length).toBeGreaterThan(20);
  expect(new Set(CAUTIONS.map(({ key }) => key)).size).toBe(CAUTIONS.length);
  for (const { says, source, at } of CAUTIONS) {
    expect(says).toMatch(/^[A-Z].*\.$/);
    expect(source).not.toBe('');
    expect(at.length).toBeGreaterThan(0);
  }
});

test('a caution names only what there is: equipment, remedies, faults, states, kinds', () => {
  const known = {
    equipment: new Set<string>(EQUIPMENT_TYPES),
    faults: new Set(FAULTS.map(({ id }) => id)),
    states: new Set<string>(OPERATING_STATES),
    kinds: new Set<string>(SYSTEM_KINDS),
  };
  for (const spot of CAUTIONS.flatMap(({ at }) => at)) {
    expect((spot.remedies ?? []).filter((id) => !isRemedy(id))).toEqual([]);
    expect((spot.equipment ?? []).filter((one) => !known.equipment.has(one))).toEqual([]);
    expect((spot.faults ?? []).filter((one) => !known.faults.has(one))).toEqual([]);
    expect((spot.states ?? []).filter((one) => !known.states.has(one))).toEqual([]);
    expect((spot.kinds ?? []).filter((one) => !known.kinds.has(one))).toEqual([]);
  }
});

test('mains and salt water is said wherever hands may go into the water, and not where they do not', () => {
  expect(keys({ doing: 'review', equipment: ['heater'] })).toContain('electricity');
  expect(keys({ doing: 'round', equipment: ['light'] })).toContain('electricity');
  expect(keys({ doing: 'state', states: ['water-change'] })).toContain('electricity');
  expect(keys({ doing: 'case', faults: ['rcd-trips'] })).toContain('electricity');
  expect(keys({ doing: 'finding', remedies: ['cut-out'] })).toContain('electricity');
  expect(keys({ doing: 'state', states: ['night'], equipment: ['heater'] })).toEqual([]);
  expect(keys({ doing: 'finding', remedies: ['rota-gap'] })).toEqual(['alone']);
});

test('ozone is warned of in a state only where there is ozone', () => {
  const during = (equipment: Place['equipment']) => keys({ doing: 'state', states: ['treatment'], equipment });
  expect(during(['ozone'])).toContain('ozone');
  expect(during(['skimmer'])).not.toContain('ozone');
});

test('whoever goes to an alarm is told not to go alone unsaid, and to a wet floor, to cut the power first', () => {
  expect(keys({ doing: 'alarm' })).toEqual(['alone']);
  expect(keys({ doing: 'alarm', floor: true })).toEqual(['wet-floor', 'alone']);
});

test('figures stand behind what is said, with how far they are known', () => {
  const said = cautionsFor({ doing: 'case', equipment: ['ozone'] })
    .map(cautionText)
    .join(' ');
  expect(said).toContain('0.2 ppm over 15 minutes in the UK; 0.1 ppm over 8 hours in the USA (from memory)');
});
