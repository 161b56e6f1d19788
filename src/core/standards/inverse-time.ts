/**
 * Constants of the inverse-time laws of overcurrent relays, t = TMS·k/((I/Is)^α − 1); k in s.
 * Source: IEC 60255-151:2009, curves A, B, C; constants read, clause from memory.
 */
export const inverseTimeLaws = {
  standard: { k: 0.14, alpha: 0.02 },
  very: { k: 13.5, alpha: 1 },
  extremely: { k: 80, alpha: 2 },
} as const;

export type InverseTimeLaw = keyof typeof inverseTimeLaws;

/** The laws are declared up to this multiple of the setting. */
export const GREATEST_MULTIPLE = 20;
