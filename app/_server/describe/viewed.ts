import 'server-only';
import { z } from 'zod';

/** In which units whoever looks wants to read. */
export const viewed = { units: z.enum(['metric', 'us']) };
