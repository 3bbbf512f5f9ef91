import 'server-only';
import { monthsKept, retireMonth } from '#data/readings/retire';
import { logInfo } from '../log';

/** Lets readings go, month by month from the oldest, until one is still wanted. @returns the months that went, ISO days */
export async function retireReadings(): Promise<string[]> {
  const gone: string[] = [];
  for (const month of await monthsKept()) {
    const outcome = await retireMonth(month);
    if (outcome !== 'retired') break;
    logInfo('readings of a month were retired', { month });
    gone.push(month);
  }
  return gone;
}
