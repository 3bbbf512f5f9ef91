import { fault as airStops } from './air-stops';
import { fault as chillerOff } from './chiller-off';
import { fault as chillerOn } from './chiller-on';
import { fault as circuitTrips } from './circuit-trips';
import { fault as circulationStops } from './circulation-stops';
import { fault as controlProbeLost } from './control-probe-lost';
import { fault as controlProbeOut } from './control-probe-out';
import { fault as feedingNeverEnds } from './feeding-never-ends';
import { fault as gatewaySilent } from './gateway-silent';
import { fault as heaterOff } from './heater-off';
import { fault as heaterOn } from './heater-on';
import { fault as overflowBlocked } from './overflow-blocked';
import { fault as rcdTrips } from './rcd-trips';
import { fault as returnPumpsNothing } from './return-pumps-nothing';
import { fault as returnStops } from './return-stops';
import { fault as skimmerFloods } from './skimmer-floods';
import { fault as skimmerStops } from './skimmer-stops';
import { fault as stateAlone } from './state-alone';
import { fault as topOffOff } from './top-off-off';
import { fault as topOffOn } from './top-off-on';
import { fault as utilityFails } from './utility-fails';
import { fault as utilityFailsNoGenerator } from './utility-fails-no-generator';
import { fault as wasteOpen } from './waste-open';
import type { Fault } from './fault';

/** Every failure mode that is simulated, in the order of the catalogue page. To add one: write its file and list it here. */
export const FAULTS: readonly Fault[] = [
  heaterOn,
  heaterOff,
  controlProbeOut,
  controlProbeLost,
  returnStops,
  returnPumpsNothing,
  circuitTrips,
  rcdTrips,
  utilityFails,
  utilityFailsNoGenerator,
  topOffOn,
  topOffOff,
  overflowBlocked,
  skimmerFloods,
  airStops,
  skimmerStops,
  circulationStops,
  chillerOff,
  chillerOn,
  wasteOpen,
  feedingNeverEnds,
  stateAlone,
  gatewaySilent,
];
