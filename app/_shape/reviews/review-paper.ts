import { z } from 'zod';
import { systemPlace } from './case-place';

/** The review of a system as a file to be kept, in the units a person reads. */
export const reviewPaper = systemPlace.extend({ units: z.enum(['metric', 'us']).default('metric') });
