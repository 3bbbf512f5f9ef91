import { describe, expect, test } from 'vitest';
import { topicTemplate } from '#core/readings/topics';

/** What the sensor is called, by the filter and the topic that came. */
function nameOf(written: string, topic: string): string | null {
  const template = topicTemplate(written);
  if (!template.ok) throw new Error(template.reason);
  return template.value.nameOf(topic);
}

describe('a topic', () => {
  // The examples of MQTT 5 (OASIS), 4.7.1.2 and 4.7.1.3, and of 4.7.2.
  test.each([
    ['sport/tennis/player1/#', 'sport/tennis/player1', true],
    ['sport/tennis/player1/#', 'sport/tennis/player1/ranking', true],
    ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon', true],
    ['sport/#', 'sport', true],
    ['sport/tennis/+', 'sport/tennis/player1', true],
    ['sport/tennis/+', 'sport/tennis/player2', true],
    ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
    ['sport/+', 'sport', false],
    ['sport/+', 'sport/', true],
    ['+/+', '/finance', true],
    ['/+', '/finance', true],
    ['+', '/finance', false],
    ['#', '$SYS/monitor/Clients', false],
    ['+/monitor/Clients', '$SYS/monitor/Clients', false],
    ['$SYS/#', '$SYS/monitor/Clients', true],
    ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
  ])('of the filter %s: %s is %s', (filter, topic, is) => {
    expect(nameOf(filter, topic)).toBe(is ? topic : null);
  });

  test('of a template is that of the sensor it names, wherever it names it', () => {
    expect(nameOf('plant/{system}/{sensor}/value', 'plant/reef-1/ph/value')).toBe('reef-1/ph');
    expect(nameOf('{sensor}/of/{system}/#', 'ph/of/reef-1/raw/1')).toBe('reef-1/ph');
    expect(nameOf('plant/{system}/{sensor}/value', 'plant/reef-1/value')).toBeNull();
    expect(topicTemplate('plant/{system}/{sensor}/value')).toMatchObject({ value: { filter: 'plant/+/+/value' } });
  });

  test.each([
    ['', '1 to 200'],
    ['a'.repeat(201), '1 to 200'],
    ['a\u0000', 'one line'],
    ['a/#/b', '#'],
    ['a/b#', '#'],
    ['a/b+', '+'],
    ['a/{tank}', '{system} and {sensor}'],
    ['a/x{system}/{sensor}', '{system} and {sensor}'],
    ['a/{system}', 'or neither'],
    ['{system}/{sensor}/{sensor}', 'twice'],
  ])('filter %j is refused', (written, why) => {
    expect(topicTemplate(written)).toMatchObject({ ok: false, reason: expect.stringContaining(why) });
  });
});
