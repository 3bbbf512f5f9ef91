// Written by `npm run list-faults`: every file of the folder `modes`. Do not edit.
import type { Mode } from './fault';
import { fault as airDrawsFumes } from './modes/air-draws-fumes';
import { fault as airForgotten } from './modes/air-forgotten';
import { fault as airLineSiphons } from './modes/air-line-siphons';
import { fault as airLineSplits } from './modes/air-line-splits';
import { fault as airStops } from './modes/air-stops';
import { fault as alarmFlood } from './modes/alarm-flood';
import { fault as alarmsPutOff } from './modes/alarms-put-off';
import { fault as allOnOneStrip } from './modes/all-on-one-strip';
import { fault as animalOpensValve } from './modes/animal-opens-valve';
import { fault as backwashNeverEnds } from './modes/backwash-never-ends';
import { fault as batteryAirFails } from './modes/battery-air-fails';
import { fault as biofilterPoisoned } from './modes/biofilter-poisoned';
import { fault as changeNeverEnds } from './modes/change-never-ends';
import { fault as chillerNoFlow } from './modes/chiller-no-flow';
import { fault as chillerOff } from './modes/chiller-off';
import { fault as chillerOn } from './modes/chiller-on';
import { fault as chillerSetWrong } from './modes/chiller-set-wrong';
import { fault as chillerWeak } from './modes/chiller-weak';
import { fault as circuitTrips } from './modes/circuit-trips';
import { fault as circulationDrops } from './modes/circulation-drops';
import { fault as circulationStops } from './modes/circulation-stops';
import { fault as clockWrong } from './modes/clock-wrong';
import { fault as closedLoopOpens } from './modes/closed-loop-opens';
import { fault as co2InRoom } from './modes/co2-in-room';
import { fault as co2On } from './modes/co2-on';
import { fault as controlProbeFrozen } from './modes/control-probe-frozen';
import { fault as controlProbeHigh } from './modes/control-probe-high';
import { fault as controlProbeLost } from './modes/control-probe-lost';
import { fault as controlProbeLow } from './modes/control-probe-low';
import { fault as controlProbeOut } from './modes/control-probe-out';
import { fault as coolingNotRestarted } from './modes/cooling-not-restarted';
import { fault as dechlorinationStops } from './modes/dechlorination-stops';
import { fault as disease } from './modes/disease';
import { fault as doserOff } from './modes/doser-off';
import { fault as doserOn } from './modes/doser-on';
import { fault as doserSiphons } from './modes/doser-siphons';
import { fault as dosesCaughtUp } from './modes/doses-caught-up';
import { fault as drumStalls } from './modes/drum-stalls';
import { fault as exchangerLeaks } from './modes/exchanger-leaks';
import { fault as feederDumps } from './modes/feeder-dumps';
import { fault as feederEmpty } from './modes/feeder-empty';
import { fault as feedingNeverEnds } from './modes/feeding-never-ends';
import { fault as filterBlinds } from './modes/filter-blinds';
import { fault as filterGoesFoul } from './modes/filter-goes-foul';
import { fault as filterStops } from './modes/filter-stops';
import { fault as floorDrainBlocked } from './modes/floor-drain-blocked';
import { fault as flowSensorStuck } from './modes/flow-sensor-stuck';
import { fault as gasSupersaturation } from './modes/gas-supersaturation';
import { fault as gatewaySilent } from './modes/gateway-silent';
import { fault as generatorDies } from './modes/generator-dies';
import { fault as heatLoopStops } from './modes/heat-loop-stops';
import { fault as heatValveOpen } from './modes/heat-valve-open';
import { fault as heaterAgainstChiller } from './modes/heater-against-chiller';
import { fault as heaterLive } from './modes/heater-live';
import { fault as heaterOff } from './modes/heater-off';
import { fault as heaterOn } from './modes/heater-on';
import { fault as heaterPartly } from './modes/heater-partly';
import { fault as heaterRunsDry } from './modes/heater-runs-dry';
import { fault as heaterSetWrong } from './modes/heater-set-wrong';
import { fault as heatersOnOneRelay } from './modes/heaters-on-one-relay';
import { fault as hoseLeftRunning } from './modes/hose-left-running';
import { fault as lateralsBreak } from './modes/laterals-break';
import { fault as leakSensorDead } from './modes/leak-sensor-dead';
import { fault as levelSwitchHigh } from './modes/level-switch-high';
import { fault as levelSwitchLow } from './modes/level-switch-low';
import { fault as lightFallsIn } from './modes/light-falls-in';
import { fault as lightOff } from './modes/light-off';
import { fault as lightOn } from './modes/light-on';
import { fault as limewaterSlurry } from './modes/limewater-slurry';
import { fault as mainsChange } from './modes/mains-change';
import { fault as mainsFillStuck } from './modes/mains-fill-stuck';
import { fault as makeUpLeftFilling } from './modes/make-up-left-filling';
import { fault as makeUpSpent } from './modes/make-up-spent';
import { fault as multiportOnWaste } from './modes/multiport-on-waste';
import { fault as newWaterChlorinated } from './modes/new-water-chlorinated';
import { fault as newWaterCold } from './modes/new-water-cold';
import { fault as newWaterWrongSalt } from './modes/new-water-wrong-salt';
import { fault as nobodyAnswers } from './modes/nobody-answers';
import { fault as nonReturnPasses } from './modes/non-return-passes';
import { fault as nonReturnStuck } from './modes/non-return-stuck';
import { fault as oneBox } from './modes/one-box';
import { fault as onePersonKnows } from './modes/one-person-knows';
import { fault as overfed } from './modes/overfed';
import { fault as overflowBlocked } from './modes/overflow-blocked';
import { fault as oxygenSensorWrong } from './modes/oxygen-sensor-wrong';
import { fault as oxygenStuckOpen } from './modes/oxygen-stuck-open';
import { fault as ozoneBypasses } from './modes/ozone-bypasses';
import { fault as ozoneOff } from './modes/ozone-off';
import { fault as ozoneOn } from './modes/ozone-on';
import { fault as ozoneProbeLow } from './modes/ozone-probe-low';
import { fault as ozoneValveWrong } from './modes/ozone-valve-wrong';
import { fault as phProbeDrifts } from './modes/ph-probe-drifts';
import { fault as phProbeOut } from './modes/ph-probe-out';
import { fault as phaseLost } from './modes/phase-lost';
import { fault as powerMeterWrong } from './modes/power-meter-wrong';
import { fault as probesInOnePlace } from './modes/probes-in-one-place';
import { fault as pumpLeaksCurrent } from './modes/pump-leaks-current';
import { fault as pumpLeftUnplugged } from './modes/pump-left-unplugged';
import { fault as rcdTrips } from './modes/rcd-trips';
import { fault as reactorWithoutFlow } from './modes/reactor-without-flow';
import { fault as reservoirEmpty } from './modes/reservoir-empty';
import { fault as reservoirWrongWater } from './modes/reservoir-wrong-water';
import { fault as returnHoseOff } from './modes/return-hose-off';
import { fault as returnNoRestart } from './modes/return-no-restart';
import { fault as returnPumpsNothing } from './modes/return-pumps-nothing';
import { fault as returnRunsDry } from './modes/return-runs-dry';
import { fault as returnStops } from './modes/return-stops';
import { fault as roomCold } from './modes/room-cold';
import { fault as roomHot } from './modes/room-hot';
import { fault as safeguardDefeated } from './modes/safeguard-defeated';
import { fault as salinitySensorWrong } from './modes/salinity-sensor-wrong';
import { fault as screenBlocked } from './modes/screen-blocked';
import { fault as siphonOverflowStops } from './modes/siphon-overflow-stops';
import { fault as skimmerFloods } from './modes/skimmer-floods';
import { fault as skimmerNoAir } from './modes/skimmer-no-air';
import { fault as skimmerStops } from './modes/skimmer-stops';
import { fault as stateAlone } from './modes/state-alone';
import { fault as sumpOverfilled } from './modes/sump-overfilled';
import { fault as supplyBringsWrong } from './modes/supply-brings-wrong';
import { fault as supplyStops } from './modes/supply-stops';
import { fault as supplyStuckOpen } from './modes/supply-stuck-open';
import { fault as tankBursts } from './modes/tank-bursts';
import { fault as tankLeaks } from './modes/tank-leaks';
import { fault as thoughtAnotherHadIt } from './modes/thought-another-had-it';
import { fault as thrownIn } from './modes/thrown-in';
import { fault as topOffOff } from './modes/top-off-off';
import { fault as topOffOn } from './modes/top-off-on';
import { fault as topOffSiphons } from './modes/top-off-siphons';
import { fault as topOffUnplugged } from './modes/top-off-unplugged';
import { fault as transferFails } from './modes/transfer-fails';
import { fault as transferUnmatched } from './modes/transfer-unmatched';
import { fault as treatmentNeverEnds } from './modes/treatment-never-ends';
import { fault as utilityFails } from './modes/utility-fails';
import { fault as utilityFailsNoBattery } from './modes/utility-fails-no-battery';
import { fault as utilityFailsNoGenerator } from './modes/utility-fails-no-generator';
import { fault as uvInTreatment } from './modes/uv-in-treatment';
import { fault as uvWeak } from './modes/uv-weak';
import { fault as uvWithoutFlow } from './modes/uv-without-flow';
import { fault as valveLeftShut } from './modes/valve-left-shut';
import { fault as wasteOpen } from './modes/waste-open';
import { fault as waveAmplifies } from './modes/wave-amplifies';
import { fault as wrongBottle } from './modes/wrong-bottle';
import { fault as wrongTank } from './modes/wrong-tank';

/** Every failure mode, by the name of its file. */
export const MODES: readonly Mode[] = [
  airDrawsFumes, airForgotten, airLineSiphons, airLineSplits, airStops, alarmFlood, alarmsPutOff, allOnOneStrip,
  animalOpensValve, backwashNeverEnds, batteryAirFails, biofilterPoisoned, changeNeverEnds, chillerNoFlow,
  chillerOff, chillerOn, chillerSetWrong, chillerWeak, circuitTrips, circulationDrops, circulationStops,
  clockWrong, closedLoopOpens, co2InRoom, co2On, controlProbeFrozen, controlProbeHigh, controlProbeLost,
  controlProbeLow, controlProbeOut, coolingNotRestarted, dechlorinationStops, disease, doserOff, doserOn,
  doserSiphons, dosesCaughtUp, drumStalls, exchangerLeaks, feederDumps, feederEmpty, feedingNeverEnds,
  filterBlinds, filterGoesFoul, filterStops, floorDrainBlocked, flowSensorStuck, gasSupersaturation,
  gatewaySilent, generatorDies, heatLoopStops, heatValveOpen, heaterAgainstChiller, heaterLive, heaterOff,
  heaterOn, heaterPartly, heaterRunsDry, heaterSetWrong, heatersOnOneRelay, hoseLeftRunning, lateralsBreak,
  leakSensorDead, levelSwitchHigh, levelSwitchLow, lightFallsIn, lightOff, lightOn, limewaterSlurry,
  mainsChange, mainsFillStuck, makeUpLeftFilling, makeUpSpent, multiportOnWaste, newWaterChlorinated,
  newWaterCold, newWaterWrongSalt, nobodyAnswers, nonReturnPasses, nonReturnStuck, oneBox, onePersonKnows,
  overfed, overflowBlocked, oxygenSensorWrong, oxygenStuckOpen, ozoneBypasses, ozoneOff, ozoneOn, ozoneProbeLow,
  ozoneValveWrong, phProbeDrifts, phProbeOut, phaseLost, powerMeterWrong, probesInOnePlace, pumpLeaksCurrent,
  pumpLeftUnplugged, rcdTrips, reactorWithoutFlow, reservoirEmpty, reservoirWrongWater, returnHoseOff,
  returnNoRestart, returnPumpsNothing, returnRunsDry, returnStops, roomCold, roomHot, safeguardDefeated,
  salinitySensorWrong, screenBlocked, siphonOverflowStops, skimmerFloods, skimmerNoAir, skimmerStops,
  stateAlone, sumpOverfilled, supplyBringsWrong, supplyStops, supplyStuckOpen, tankBursts, tankLeaks,
  thoughtAnotherHadIt, thrownIn, topOffOff, topOffOn, topOffSiphons, topOffUnplugged, transferFails,
  transferUnmatched, treatmentNeverEnds, utilityFails, utilityFailsNoBattery, utilityFailsNoGenerator,
  uvInTreatment, uvWeak, uvWithoutFlow, valveLeftShut, wasteOpen, waveAmplifies, wrongBottle, wrongTank,
];
