import * as grid from '@odoo/o-spreadsheet';
import { App } from '@odoo/owl';
import { Workbench } from './workbench';
import { thePage } from './page/page';
import { installGuard } from './grid/guard';
import { installInGrid } from './grid/install';
import { registerFunctions, unfoldArgumentHelp } from './grid/functions';
import { pruneMenus } from './grid/menus';

/** Start of the page. */
async function start(): Promise<void> {
  const page = thePage();
  try {
    // The grid tells of its own speed on the console.
    console.debug = () => undefined;
    installInGrid(grid);
    registerFunctions(grid);
    unfoldArgumentHelp(grid);
    installGuard(grid);
    pruneMenus(grid);
    const templates = await (await fetch('vendor/o_spreadsheet.xml')).text();
    const workbench = new Workbench(page, { grid, App, templates });
    await workbench.start();
  } catch (thrown) {
    console.error(thrown);
    page.insteadOfGrid('The workbench could not start. Reload the page; if it happens again, build the project anew.');
  }
}

void start();
