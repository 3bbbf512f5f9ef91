import type { FormAction } from '../form/answer';
import type { CalledView } from '../rounds/call-help';
import { makeCall, type On } from './make';

/** Calls for help from a walk, and has it sent at once: it waits for no turn. @param meet sends what waits */
export function calling(on: On, meet: () => Promise<void>): FormAction<CalledView> {
  return async (_before, form) => {
    const made = await makeCall(on, form);
    if (made.ok) void meet();
    return made;
  };
}
