import { temperatureAlarm } from '../temperature-alarm';

/** A high temperature alarm where the animals are. */
export const remedy = temperatureAlarm('high-alarm', 'above');
