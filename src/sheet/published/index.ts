import cable from './cable.json';
import curve from './curve.json';
import duty from './duty.json';
import type { Published } from './entry';
import fault from './fault.json';
import hazard from './hazard.json';
import impedance from './impedance.json';
import life from './life.json';
import network from './network.json';
import selectivity from './selectivity.json';

/** Published figures by family, in the order of the families: the tests and the self-test read them here. */
export const published = { impedance, fault, network, cable, curve, duty, selectivity, hazard, life } as unknown as Readonly<Record<string, readonly Published[]>>;
