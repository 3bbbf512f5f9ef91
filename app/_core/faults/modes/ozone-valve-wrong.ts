import type { Fault } from '../fault';
import { fault as like } from './ozone-on';

/** A valve left shut or open after a repair. */
export const fault: Fault = {
  ...like,
  id: 'ozone-valve-wrong',
  row: 'OZ4',
  sameAs: like.id,
  title: 'Ozone valve left wrong after work',
  effect: 'Ozone without the flow that should carry it off.',
  source:
    'power back at about 13:00, a valve not reopened, 15 sharks dead that night (forums.reefcentral.com, thread 900281)',
  remedies: ['manual-restart', 'ozone-two-probes', 'oxidant-alarm'],
};
