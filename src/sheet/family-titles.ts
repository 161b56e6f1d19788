import type { Family } from '../functions/kernel/declaration';

/** Families by their headings, in the order of handbook and pane. */
export const FAMILY_TITLES: Readonly<Record<Family, string>> = {
  impedance: 'Impedances of the elements',
  fault: 'Fault currents at one place',
  network: 'Boards and couplers',
  cable: 'Conductors',
  curve: 'Time-current curves',
  duty: 'Let-through and adequacy',
  selectivity: 'Selectivity and back-up',
  hazard: 'Forces and arc energy',
  life: 'After the fault, and cost',
  check: 'Checking aids',
};
