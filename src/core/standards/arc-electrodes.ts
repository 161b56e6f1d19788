/**
 * Electrode arrangements of the arc model, by the standard's own abbreviations: VCB vertical in a box, VCBB vertical ending
 * in a barrier in a box, HCB horizontal in a box, VOA vertical in open air, HOA horizontal in open air.
 * Source: IEEE 1584-2018.
 */
export type Electrodes = 'VCB' | 'VCBB' | 'HCB' | 'VOA' | 'HOA';
export type BoxedElectrodes = 'VCB' | 'VCBB' | 'HCB';

export const inOpenAir = (electrodes: Electrodes): electrodes is 'VOA' | 'HOA' => electrodes === 'VOA' || electrodes === 'HOA';
