import { nearestWord } from '#core/facility/nearest-word';
import { describe, expect, test } from 'vitest';

describe('the nearest word', () => {
  test.each([
    ['heatr', ['heater', 'chiller'], 'heater'],
    ['form', ['value', 'from', 'low'], 'from'],
    ['Heater', ['chiller', 'heater'], 'heater'],
    ['ratedWatts', ['name', 'ratedW'], 'ratedW'],
    ['flow', ['name', 'flowLPerH'], 'flowLPerH'],
    ['sump-levle', ['sump-leak', 'sump-level'], 'sump-level'],
  ])('to %s among %j is %s', (word, known, meant) => {
    expect(nearestWord(word, known)).toBe(meant);
  });

  test.each([
    ['kim', ['sam', 'robin']],
    ['x', ['a', 'b']],
    ['pond', ['display', 'sump']],
    ['', ['ab', 'cd']],
    ['anything', []],
  ])('to %s among %j is none', (word, known) => {
    expect(nearestWord(word, known)).toBeNull();
  });
});
