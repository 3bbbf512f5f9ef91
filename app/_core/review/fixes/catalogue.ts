import { remedy as airInPause } from './remedies/air-in-pause';
import { remedy as answerAlarm } from './remedies/answer-alarm';
import { remedy as backedAir } from './remedies/backed-air';
import { remedy as cutOut } from './remedies/cut-out';
import { remedy as flowAlarm } from './remedies/flow-alarm';
import { remedy as gatewayPower } from './remedies/gateway-power';
import { remedy as generator } from './remedies/generator';
import { remedy as highAlarm } from './remedies/high-alarm';
import { remedy as highLevelLock } from './remedies/high-level-lock';
import { remedy as leakAlarm } from './remedies/leak-alarm';
import { remedy as levelAlarm } from './remedies/level-alarm';
import { remedy as levelTrip } from './remedies/level-trip';
import { remedy as lostSensing } from './remedies/lost-sensing';
import { remedy as lowAlarm } from './remedies/low-alarm';
import { remedy as lowCutOut } from './remedies/low-cut-out';
import { remedy as nightRound } from './remedies/night-round';
import { remedy as outsideWatch } from './remedies/outside-watch';
import { remedy as oxygenAlarm } from './remedies/oxygen-alarm';
import { remedy as pauseTimer } from './remedies/pause-timer';
import { remedy as phStop } from './remedies/ph-stop';
import { remedy as quickerHands } from './remedies/quicker-hands';
import { remedy as roomInSump } from './remedies/room-in-sump';
import { remedy as rotaGap } from './remedies/rota-gap';
import { remedy as runLimit } from './remedies/run-limit';
import { remedy as salinityRound } from './remedies/salinity-round';
import { remedy as secondAir } from './remedies/second-air';
import { remedy as secondChiller } from './remedies/second-chiller';
import { remedy as secondHeater } from './remedies/second-heater';
import { remedy as secondProbe } from './remedies/second-probe';
import { remedy as secondReturn } from './remedies/second-return';
import { remedy as siphonBreak } from './remedies/siphon-break';
import { remedy as skimmerInterlock } from './remedies/skimmer-interlock';
import { remedy as smallReservoir } from './remedies/small-reservoir';
import { remedy as splitCircuits } from './remedies/split-circuits';
import { remedy as splitHeaters } from './remedies/split-heaters';
import { remedy as splitRcd } from './remedies/split-rcd';
import { remedy as sumpInterlock } from './remedies/sump-interlock';
import { remedy as wattsAlarm } from './remedies/watts-alarm';
import type { Remedy } from './remedy';

/** Every remedy that can be tried in the model. To add one: write its file and list it here. */
export const REMEDIES: readonly Remedy[] = [
  airInPause,
  answerAlarm,
  backedAir,
  cutOut,
  flowAlarm,
  gatewayPower,
  generator,
  highAlarm,
  highLevelLock,
  leakAlarm,
  levelAlarm,
  levelTrip,
  lostSensing,
  lowAlarm,
  lowCutOut,
  nightRound,
  outsideWatch,
  oxygenAlarm,
  pauseTimer,
  phStop,
  quickerHands,
  roomInSump,
  rotaGap,
  runLimit,
  salinityRound,
  secondAir,
  secondChiller,
  secondHeater,
  secondProbe,
  secondReturn,
  siphonBreak,
  skimmerInterlock,
  smallReservoir,
  splitCircuits,
  splitHeaters,
  splitRcd,
  sumpInterlock,
  wattsAlarm,
];
