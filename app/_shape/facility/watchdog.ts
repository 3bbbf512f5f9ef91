import type { Watchdog } from '#core/facility/site';
import type { z } from 'zod';
import { amount } from './amount';
import { answeredBy } from './answered-by';
import { noun } from './noun';
import { keyOf } from './words';

export const watchdogShape = noun('watchdog', 'A watch kept outside the site.', {
  afterMin: amount('Min', 'Silence after which it calls'),
  answeredBy: answeredBy('Who answers its call:'),
  safeguard: keyOf('safeguard', 'Key of the site safeguard (kind alarm) whose tests prove that its call arrives.', {
    of: 'alarm',
  }).optional(),
}) satisfies z.ZodType<Watchdog>;
