import { rule as airOffInState } from './air-off-in-state';
import { rule as alarmLimitInSwing } from './alarm-limit-in-swing';
import { rule as alarmLimitLate } from './alarm-limit-late';
import { rule as alarmLimitWithoutRoom } from './alarm-limit-without-room';
import { rule as alarmNeverRaised } from './alarm-never-raised';
import { rule as alarmOnControlProbe } from './alarm-on-control-probe';
import { rule as alarmUnanswered } from './alarm-unanswered';
import { rule as alarmWithoutResponse } from './alarm-without-response';
import { rule as allOnOneRcd } from './all-on-one-rcd';
import { rule as allOnOneRelay } from './all-on-one-relay';
import { rule as bandTooWide } from './band-too-wide';
import { rule as blindWattsRange } from './blind-watts-range';
import { rule as calibrationOverdue } from './calibration-overdue';
import { rule as circuitOverloaded } from './circuit-overloaded';
import { rule as circuitWithoutRcd } from './circuit-without-rcd';
import { rule as co2WithoutPhStop } from './co2-without-ph-stop';
import { rule as dosingInWaterChange } from './dosing-in-water-change';
import { rule as dosingWithoutFlow } from './dosing-without-flow';
import { rule as drainDownOverSump } from './drain-down-over-sump';
import { rule as dutyWithoutAlarm } from './duty-without-alarm';
import { rule as equipmentOnNoCircuit } from './equipment-on-no-circuit';
import { rule as fillAtNight } from './fill-at-night';
import { rule as heaterAlone } from './heater-alone';
import { rule as heaterBareInWaterChange } from './heater-bare-in-water-change';
import { rule as heaterFightsChiller } from './heater-fights-chiller';
import { rule as heaterNearChiller } from './heater-near-chiller';
import { rule as heaterOnWhenBlind } from './heater-on-when-blind';
import { rule as heatersOnOneRelay } from './heaters-on-one-relay';
import { rule as lineByPerson } from './line-by-person';
import { rule as monitorOnWatchedCircuit } from './monitor-on-watched-circuit';
import { rule as monitorWithoutBacking } from './monitor-without-backing';
import { rule as noHighTemperatureAlarm } from './no-high-temperature-alarm';
import { rule as noLeakAlarm } from './no-leak-alarm';
import { rule as noLevelAlarm } from './no-level-alarm';
import { rule as noLowTemperatureAlarm } from './no-low-temperature-alarm';
import { rule as noOxidantAlarm } from './no-oxidant-alarm';
import { rule as noOxygenAlarm } from './no-oxygen-alarm';
import { rule as noPhAlarm } from './no-ph-alarm';
import { rule as noReturnAlarm } from './no-return-alarm';
import { rule as noWattsRange } from './no-watts-range';
import { rule as ozoneOnOneProbe } from './ozone-on-one-probe';
import { rule as pairOnOneRcd } from './pair-on-one-rcd';
import { rule as paperMissing } from './paper-missing';
import { rule as pauseEndedByPerson } from './pause-ended-by-person';
import { rule as planOnOwnWord } from './plan-on-own-word';
import { rule as probesInOnePlace } from './probes-in-one-place';
import { rule as reservoirTooLarge } from './reservoir-too-large';
import { rule as returnProvedByCommand } from './return-proved-by-command';
import { rule as safeguardOff } from './safeguard-off';
import { rule as safeguardUntested } from './safeguard-untested';
import { rule as salinityUnwatched } from './salinity-unwatched';
import { rule as shortCycling } from './short-cycling';
import { rule as siphonBreakAlone } from './siphon-break-alone';
import { rule as skimmerInWaterChange } from './skimmer-in-water-change';
import { rule as skimmerWhileFeeding } from './skimmer-while-feeding';
import { rule as stateWithoutEnd } from './state-without-end';
import { rule as sumpHeaterWithoutInterlock } from './sump-heater-without-interlock';
import { rule as sumpSkimmerWithoutInterlock } from './sump-skimmer-without-interlock';
import { rule as thermostatByPerson } from './thermostat-by-person';
import { rule as topOffInWaterChange } from './top-off-in-water-change';
import { rule as topOffWithoutRunLimit } from './top-off-without-run-limit';
import { rule as undecidedInTreatment } from './undecided-in-treatment';
import { rule as unsafeWhenBlind } from './unsafe-when-blind';
import type { Rule } from './rule';

/**
 * Every paperwork check, in the order of the catalogue page: heat, skimmer and states, top-off and levels, chemistry, power,
 * proof, alarms, tests, papers. To add one: write its file and list it here.
 */
export const RULES: readonly Rule[] = [
  heaterAlone,
  heatersOnOneRelay,
  heaterOnWhenBlind,
  unsafeWhenBlind,
  sumpHeaterWithoutInterlock,
  thermostatByPerson,
  shortCycling,
  bandTooWide,
  heaterFightsChiller,
  heaterNearChiller,
  probesInOnePlace,
  sumpSkimmerWithoutInterlock,
  skimmerInWaterChange,
  skimmerWhileFeeding,
  pauseEndedByPerson,
  undecidedInTreatment,
  airOffInState,
  stateWithoutEnd,
  topOffWithoutRunLimit,
  reservoirTooLarge,
  fillAtNight,
  topOffInWaterChange,
  dosingInWaterChange,
  heaterBareInWaterChange,
  drainDownOverSump,
  siphonBreakAlone,
  ozoneOnOneProbe,
  co2WithoutPhStop,
  dosingWithoutFlow,
  allOnOneRcd,
  allOnOneRelay,
  pairOnOneRcd,
  equipmentOnNoCircuit,
  circuitWithoutRcd,
  circuitOverloaded,
  noWattsRange,
  blindWattsRange,
  returnProvedByCommand,
  lineByPerson,
  planOnOwnWord,
  noHighTemperatureAlarm,
  noLowTemperatureAlarm,
  alarmOnControlProbe,
  noOxygenAlarm,
  noOxidantAlarm,
  noPhAlarm,
  noReturnAlarm,
  dutyWithoutAlarm,
  noLevelAlarm,
  noLeakAlarm,
  salinityUnwatched,
  alarmUnanswered,
  alarmWithoutResponse,
  alarmLimitInSwing,
  alarmLimitLate,
  alarmLimitWithoutRoom,
  alarmNeverRaised,
  monitorOnWatchedCircuit,
  monitorWithoutBacking,
  safeguardUntested,
  safeguardOff,
  calibrationOverdue,
  paperMissing,
];
