import 'server-only';
import type { z } from 'zod';
import type { facilityShape } from '#shape/facility/facility';

/** A facility as the file writes it: what is kept in the database is cut from this, and put together to this again. */
export type FacilityForm = z.input<typeof facilityShape>;

/** Fields of one thing of the file, whatever it is. */
export type Fields = Record<string, unknown>;

/** Test of a safeguard, as the file writes it. */
export interface TestForm {
  on: string;
  result: 'worked' | 'failed';
  by?: string;
  steps?: string;
  expected?: string;
  seen?: string;
}
