import { airLine } from './air-line';
import type { Cause } from './cause';
import { person } from './person';
import { probe } from './probe';
import { relay } from './relay';
import { reservoir } from './reservoir';
import { supply } from './supply';
import { well } from './well';

/**
 * What makes several failures one (the common-cause list of the trade: same relay, RCD, circuit, probe, well, person, reservoir,
 * air line, generator, network; common practice, no source). Gateways and routers stand in `silenced.ts`, a standby in daily duty
 * in `two-step.ts`. Phase, firmware, plug strip and spare parts are not described.
 */
export const CAUSES: readonly Cause[] = [relay, supply, probe, well, reservoir, airLine, person];
