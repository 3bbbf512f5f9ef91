import { temperatureAlarm } from '../temperature-alarm';

/** A low temperature alarm where the animals are. */
export const remedy = temperatureAlarm('low-alarm', 'below');
