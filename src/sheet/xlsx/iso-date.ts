const DAY = 86_400_000;
const ISO = /^(?:(\d{4})-(\d{2})-(\d{2}))?(?:T?(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?)?Z?$/;

/** Day number of a date that the file writes out (`2025-03-31T12:00:00`); a time alone is a fraction of a day. */
export function serialOfIsoDate(text: string, date1904: boolean): number | undefined {
  const parts = ISO.exec(text);
  if (!parts || text === '') return undefined;
  const [, year, month, day, hour = '0', minute = '0', second = '0'] = parts;
  const time = (Number(hour) * 3600 + Number(minute) * 60 + Number(second)) / 86_400;
  if (year === undefined) return time;
  const at = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const back = new Date(at);
  if (back.getUTCMonth() !== Number(month) - 1 || back.getUTCDate() !== Number(day)) return undefined;
  const days = at / DAY;
  if (date1904) return days - Date.UTC(1904, 0, 1) / DAY + time;
  const serial = days - Date.UTC(1899, 11, 30) / DAY;
  // The 1900 system counts a 29 February 1900 that never was: days before it stand one lower.
  return (serial < 61 ? serial - 1 : serial) + time;
}
