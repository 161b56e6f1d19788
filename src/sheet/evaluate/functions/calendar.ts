import { raise } from '../errors';

export const LAST_DAY = 2958465; // 31 December 9999
const DAY = 86_400_000;
const UNIX_EPOCH = 25569;

/** Excel counts a 29 February 1900 that never was: day 60. */
const LEAP_1900 = 60;

export interface CalendarDay {
  year: number;
  month: number;
  day: number;
}

/** Serial number of a day; months and days beyond their range carry over. */
export function serialOf(year: number, month: number, day: number): number {
  const fullYear = year >= 0 && year < 1900 ? year + 1900 : year;
  const date = new Date(0);
  date.setUTCFullYear(fullYear, month - 1, day);
  const days = date.getTime() / DAY + UNIX_EPOCH;
  return checkedDay(days <= LEAP_1900 ? days - 1 : days);
}

export function checkedDay(serial: number): number {
  return serial >= 0 && serial < LAST_DAY + 1 ? serial : raise('#NUM!', 'the date lies outside 1900 to 9999');
}

export function calendarDay(serial: number): CalendarDay {
  const whole = Math.floor(checkedDay(serial));
  if (whole === LEAP_1900) return { year: 1900, month: 2, day: 29 };
  if (whole === 0) return { year: 1900, month: 1, day: 0 };
  const date = new Date(((whole < LEAP_1900 ? whole + 1 : whole) - UNIX_EPOCH) * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** Day of the week by Excel's count, 0 for Sunday. */
export const weekday = (serial: number): number => (Math.floor(checkedDay(serial)) + 6) % 7;

export const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 || year === 1900;

export const daysInMonth = (year: number, month: number): number =>
  month === 2 ? (isLeapYear(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

/** The same day so many months on, or the last of that month where it has no such day. */
export function monthsLater(serial: number, months: number): number {
  const { year, month, day } = calendarDay(serial);
  const total = year * 12 + month - 1 + months;
  const [toYear, toMonth] = [Math.floor(total / 12), (total % 12 + 12) % 12 + 1];
  if (toYear < 1900) return raise('#NUM!', 'the date lies before 1900');
  return serialOf(toYear, toMonth, Math.min(day, daysInMonth(toYear, toMonth)));
}
