import { z } from 'zod';
import { systemPlace } from './case-place';

/** Two kept reviews of a system, by their ids; without them, the last two. */
export const reviewPair = systemPlace.extend({ from: z.uuid().optional(), to: z.uuid().optional() });
