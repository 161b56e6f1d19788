import { type Working, silent } from '../working';

/** Costs in whatever money the sheet is in. Source of all: arithmetic. */

/**
 * First cost of an option.
 * @param discountPct off the list price, %
 * @param labour      hours of fitting
 * @param rate        money an hour
 */
export function firstCost(listPrice: number, discountPct: number, labour: number, rate: number, extras: number, work: Working = silent): number {
  const bought = listPrice * (1 - discountPct / 100);
  const cost = bought + labour * rate + extras;
  work.step('bought', 'list·(1 − discount)', { list: listPrice, discount: [discountPct, '%'] }, bought);
  work.step('first cost', 'bought + hours·rate + extras', { bought, hours: [labour, 'h'], rate, extras }, cost);
  return cost;
}

/**
 * Cost of putting one fault right, with the downtime.
 * @param chance   that the parts are needed; 1 for fuse links
 * @param downtime hours, travel and waiting among them
 */
export function reinstateCost(parts: number, labour: number, rate: number, downtime: number, downtimeRate: number, chance: number, work: Working = silent): number {
  const cost = chance * parts + labour * rate + downtime * downtimeRate;
  work.step('one fault', 'chance·parts + hours·rate + downtime·its rate', { chance, parts, hours: [labour, 'h'], rate, downtime: [downtime, 'h'], 'its rate': downtimeRate }, cost);
  return cost;
}

/**
 * Cost a year of a device's heat loss.
 * @param loss  W
 * @param hours a year, h
 * @param price money a kWh
 */
export function lossCost(loss: number, hours: number, price: number, work: Working = silent): number {
  const cost = (loss / 1000) * hours * price;
  work.step('losses a year', 'P/1000·hours·price', { P: [loss, 'W'], hours: [hours, 'h'], price }, cost);
  return cost;
}
