import type { Backing, Circuit } from '#core/facility/site';
import { z } from 'zod';
import { figure } from './figure';
import { listOf } from './list';
import { noun } from './noun';
import { keyOf, keyText, nameText } from './words';

const BACKINGS = ['ups', 'generator'] as const satisfies readonly Backing[];

export const circuitShape = noun('circuit', 'One electrical circuit with its breaker.', {
  key: keyText('Key of the circuit.'),
  name: nameText('Name of the circuit, as on the board.'),
  breakerA: figure('A', 'Rating of the breaker').optional(),
  volts: figure('V', 'Voltage').optional(),
  rcd: nameText('RCD (GFCI) group: circuits of the same group lose power together.').optional(),
  backedBy: listOf(z.enum(BACKINGS), 'What keeps it alive after the utility fails: ups, generator.'),
  upsMin: figure('Min', 'How long the battery carries it').optional(),
  upsSafeguard: keyOf('safeguard', 'Key of the site safeguard (kind standby-power) that proves the battery.', {
    of: 'standby-power',
  }).optional(),
}) satisfies z.ZodType<Circuit>;
