import { raise } from '../errors';
import { type CalendarDay, calendarDay, daysInMonth, isLeapYear, serialOf } from './calendar';

const isEndOfFebruary = ({ year, month, day }: CalendarDay): boolean => month === 2 && day === daysInMonth(year, 2);
const on360 = (a: CalendarDay, b: CalendarDay): number => (b.year - a.year) * 360 + (b.month - a.month) * 30 + b.day - a.day;

/** Days between two dates in a year of twelve months of 30 days, by the European or the American rule of DAYS360. */
export function days360(from: number, to: number, european: boolean): number {
  const [a, b] = [calendarDay(from), calendarDay(to)];
  if (european) return on360({ ...a, day: Math.min(a.day, 30) }, { ...b, day: Math.min(b.day, 30) });
  const start = a.day === 31 || isEndOfFebruary(a) ? { ...a, day: 30 } : a;
  // An end on the 31st after an earlier start day counts as the first of the next month.
  const end = b.day !== 31 ? b : start.day < 30 ? { ...b, month: b.month + 1, day: 1 } : { ...b, day: 30 };
  return on360(start, end);
}

/** YEARFRAC's own American rule differs from that of DAYS360 at the end of the month. */
function american(from: number, to: number): number {
  const [a, b] = [calendarDay(from), calendarDay(to)];
  const [start, end] = [{ ...a }, { ...b }];
  if (isEndOfFebruary(a) && isEndOfFebruary(b)) end.day = 30;
  if (isEndOfFebruary(a)) start.day = 30;
  if (end.day === 31 && start.day >= 30) end.day = 30;
  if (start.day === 31) start.day = 30;
  return on360(start, end) / 360;
}

/** Actual days over the mean length of the years touched; within one year over 366 where a 29 February lies between. */
function actual(from: number, to: number): number {
  const [a, b] = [calendarDay(from), calendarDay(to)];
  const withinYear = a.year === b.year || (b.year === a.year + 1 && (a.month > b.month || (a.month === b.month && a.day >= b.day)));
  if (!withinYear) {
    const years = b.year - a.year + 1;
    return (to - from) / ((serialOf(b.year + 1, 1, 1) - serialOf(a.year, 1, 1)) / years);
  }
  const leapDay = (year: number): boolean => {
    if (!isLeapYear(year)) return false;
    const serial = serialOf(year, 2, 29);
    return serial >= from && serial <= to;
  };
  const isLong = a.year === b.year ? isLeapYear(a.year) : leapDay(a.year) || leapDay(b.year);
  return (to - from) / (isLong ? 366 : 365);
}

/** Share of a year between two dates, by the bases of YEARFRAC. */
export function yearFraction(first: number, second: number, basis: number): number {
  const [from, to] = [Math.min(first, second), Math.max(first, second)];
  switch (basis) {
    case 0: return american(from, to);
    case 1: return actual(from, to);
    case 2: return (to - from) / 360;
    case 3: return (to - from) / 365;
    case 4: return days360(from, to, true) / 360;
    default: return raise('#NUM!', `there is no basis ${basis}`);
  }
}
