import { cable } from './cable';
import { check } from './check';
import { curve } from './curve';
import { duty } from './duty';
import { fault } from './fault';
import { hazard } from './hazard';
import { impedance } from './impedance';
import { life } from './life';
import { network } from './network';
import { selectivity } from './selectivity';

/** Every family, in the order of help and handbook. */
export const families = [impedance, fault, network, cable, curve, duty, selectivity, hazard, life, check] as const;
