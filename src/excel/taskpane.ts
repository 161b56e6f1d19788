import { mountPane } from '../pane/pane';
import { excelHost } from './excel-host';

/** The page of the add-in: the pane beside the sheet. The functions stand in a bundle of their own on the same page. */

const say = (words: string): void => {
  const root = document.getElementById('pane')!;
  const line = document.createElement('p');
  line.textContent = words;
  root.replaceChildren(line);
};

Office.onReady(({ host }) => {
  if (host === Office.HostType.Excel) mountPane(document.getElementById('pane')!, excelHost);
  else say('This page belongs to Excel: it shows the working of the selected cell. Add the manifest to Excel and open it there; in a browser, use the workbench.');
});
