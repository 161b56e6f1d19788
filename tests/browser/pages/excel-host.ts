import { excelHost } from '../../../src/excel/excel-host';

/** The host on a page with Microsoft's own script, for a test that stands in for Excel's side of the wire. */
Object.assign(window, { excelHost });
