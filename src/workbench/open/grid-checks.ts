import type { GridLibrary } from '../grid/library';
import type { GridChecks } from './workbook-data';

const TRUTH = /^\s*(?:true|false)\s*$/i;

/** Questions about texts and formats that only the grid's own code can answer. */
export function gridChecks({ helpers, constants, registries }: GridLibrary): GridChecks {
  const locale = constants.DEFAULT_LOCALE;
  return {
    isFormatShown: (format) => {
      try {
        helpers.parseFormat(format);
        return [1234.5678, 0, -3].every((value) => typeof helpers.formatValue(value, { format, locale }) === 'string');
      } catch {
        return false;
      }
    },
    readsAsOther: (text) =>
      text === '' || /^[='+-]/.test(text) || TRUTH.test(text) || registries.errorTypes.has(text) || helpers.isNumber(text, locale) || helpers.isDateTime(text, locale),
  };
}
