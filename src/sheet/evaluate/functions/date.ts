import type { Cell } from '../../../functions/kernel/cell';
import { raise, refuse } from '../errors';
import { type Value, cellOf, cellsOf, numberOf, toNumber, toText, toTruth, toWhole } from '../values';
import { LAST_DAY, calendarDay, checkedDay, daysInMonth, monthsLater, serialOf, weekday } from './calendar';
import { type CellFunction, type FunctionTable, cells, whole } from './definition';
import { days360, yearFraction } from './year-fraction';

const SECONDS = 86400;

const day = (cell: Cell | undefined): number => Math.floor(checkedDay(toNumber(cell)));

const ofDay = (compute: (serial: number) => number): CellFunction => cells([1, 1], (cell) => compute(day(cell)));

/** Second of the day, rounded to the second as Excel's clock is. */
const ofTime = (compute: (seconds: number) => number): CellFunction => cells([1, 1], (cell) => {
  const serial = checkedDay(toNumber(cell));
  return compute(Math.round((serial - Math.floor(serial)) * SECONDS) % SECONDS);
});

function endOfMonth(serial: number, months: number): number {
  const { year, month } = calendarDay(serial);
  const total = year * 12 + month - 1 + months;
  const toYear = Math.floor(total / 12);
  const toMonth = total - toYear * 12 + 1;
  return toYear < 1900 ? raise('#NUM!', 'the date lies before 1900') : serialOf(toYear, toMonth, daysInMonth(toYear, toMonth));
}

/** Number of the weekday, by the types of WEEKDAY: first day of the week and the number it bears. */
function weekdayNumber(serial: number, type: number): number {
  const sunday = weekday(serial);
  if (type === 1) return sunday + 1;
  if (type === 2) return ((sunday + 6) % 7) + 1;
  if (type === 3) return (sunday + 6) % 7;
  return type >= 11 && type <= 17 ? ((sunday - (type - 10) + 7) % 7) + 1 : raise('#NUM!', `there is no type ${type} of weekday`);
}

function isoWeek(serial: number): number {
  const thursday = serial - ((weekday(serial) + 6) % 7) + 3;
  return Math.floor((thursday - serialOf(calendarDay(thursday).year, 1, 1)) / 7) + 1;
}

function weekNumber(serial: number, type: number): number {
  if (type === 21) return isoWeek(serial);
  const firstDay = type === 1 ? 0 : type === 2 ? 1 : type >= 11 && type <= 17 ? (type - 10) % 7 : raise('#NUM!', `there is no type ${type} of week`);
  const january = serialOf(calendarDay(serial).year, 1, 1);
  const lead = (weekday(january) - firstDay + 7) % 7;
  return Math.floor((serial - january + lead) / 7) + 1;
}

function dateDifference(from: number, to: number, unit: string): number {
  if (from > to) return raise('#NUM!', 'the first date lies after the second');
  const [a, b] = [calendarDay(from), calendarDay(to)];
  const months = (b.year - a.year) * 12 + b.month - a.month - (b.day < a.day ? 1 : 0);
  switch (unit.toUpperCase()) {
    case 'Y': return Math.floor(months / 12);
    case 'M': return months;
    case 'D': return to - from;
    case 'YM': return months % 12;
    case 'YD': return to - monthsLater(from, Math.floor(months / 12) * 12);
    case 'MD': return refuse('DATEDIF with "MD" gives wrong results in Excel itself: not supported here');
    default: return raise('#NUM!', `"${unit}" is not a unit of DATEDIF`);
  }
}

const holidaysOf = (value: Value): Set<number> =>
  new Set(value === undefined ? [] : cellsOf(value).filter((cell) => cell !== null && cell !== '').map((cell) => day(cell)));

const isWorkday = (serial: number, holidays: Set<number>): boolean => {
  const sunday = weekday(serial);
  return sunday !== 0 && sunday !== 6 && !holidays.has(serial);
};

function netWorkdays([from, to, holidays]: Value[]): number {
  const [first, last] = [day(cellOf(from)), day(cellOf(to))];
  const free = holidaysOf(holidays);
  let count = 0;
  for (let serial = Math.min(first, last); serial <= Math.max(first, last); serial++) if (isWorkday(serial, free)) count++;
  return first <= last ? count : -count;
}

function workday([from, days, holidays]: Value[]): number {
  const free = holidaysOf(holidays);
  let serial = day(cellOf(from));
  const wanted = toWhole(cellOf(days));
  for (let left = Math.abs(wanted); left > 0;) {
    serial += Math.sign(wanted);
    if (serial < 0 || serial > LAST_DAY) return raise('#NUM!', 'the date lies outside 1900 to 9999');
    if (isWorkday(serial, free)) left--;
  }
  return serial;
}

function timeOf(hours: number, minutes: number, seconds: number): number {
  const total = hours * 3600 + minutes * 60 + seconds;
  return total < 0 ? raise('#NUM!', 'a time before midnight') : (total % SECONDS) / SECONDS;
}

function numberFrom(cell: Cell | undefined): number {
  const text = toText(cell);
  return numberOf(text, 'a date or time');
}

const clock = (now: Date | undefined): Date => now ?? refuse('no clock is given: NOW and TODAY are not supported here');
const dayOf = (now: Date): number => serialOf(now.getFullYear(), now.getMonth() + 1, now.getDate());

export const dateFunctions: FunctionTable = {
  DATE: cells([3, 3], (year, month, dayOfMonth) => serialOf(toWhole(year), toWhole(month), toWhole(dayOfMonth))),
  TIME: cells([3, 3], (hours, minutes, seconds) => timeOf(toWhole(hours), toWhole(minutes), toWhole(seconds))),
  DATEVALUE: cells([1, 1], (cell) => Math.floor(numberFrom(cell))),
  TIMEVALUE: cells([1, 1], (cell) => numberFrom(cell) % 1),
  YEAR: ofDay((serial) => calendarDay(serial).year),
  MONTH: ofDay((serial) => calendarDay(serial).month),
  DAY: ofDay((serial) => calendarDay(serial).day),
  HOUR: ofTime((seconds) => Math.floor(seconds / 3600)),
  MINUTE: ofTime((seconds) => Math.floor(seconds / 60) % 60),
  SECOND: ofTime((seconds) => seconds % 60),
  EDATE: cells([2, 2], (cell, months) => monthsLater(day(cell), toWhole(months))),
  EOMONTH: cells([2, 2], (cell, months) => endOfMonth(day(cell), toWhole(months))),
  WEEKDAY: cells([1, 2], (cell, type = 1) => weekdayNumber(day(cell), toWhole(type))),
  WEEKNUM: cells([1, 2], (cell, type = 1) => weekNumber(day(cell), toWhole(type))),
  ISOWEEKNUM: ofDay(isoWeek),
  DAYS: cells([2, 2], (end, start) => day(end) - day(start)),
  DAYS360: cells([2, 3], (start, end, european = false) => days360(day(start), day(end), toTruth(european))),
  YEARFRAC: cells([2, 3], (start, end, basis = 0) => yearFraction(day(start), day(end), toWhole(basis))),
  DATEDIF: cells([3, 3], (from, to, unit) => dateDifference(day(from), day(to), toText(unit))),
  NETWORKDAYS: whole([2, 3], netWorkdays, { single: [0, 1], emptyIsDefault: true }),
  WORKDAY: whole([2, 3], workday, { single: [0, 1], emptyIsDefault: true }),
  TODAY: whole([0, 0], (_, { now }) => dayOf(clock(now)), { volatile: true }),
  NOW: whole([0, 0], (_, { now }) => {
    const time = clock(now);
    return dayOf(time) + (time.getHours() * 3600 + time.getMinutes() * 60 + time.getSeconds() + time.getMilliseconds() / 1000) / SECONDS;
  }, { volatile: true }),
};
