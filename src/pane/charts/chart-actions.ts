import { button } from '../controls';
import { element } from '../dom';
import type { Done, PaneHost } from '../host';
import { chartSheet } from './chart-sheet';
import type { Plot } from './plot';
import { pngFile } from './png';
import { fileName, savePicture } from './save-picture';
import { FILE_SIZE, sceneOf } from './scene';
import { svgFile } from './svg';

export interface Shown {
  readonly plot: Plot | undefined;
  /** Where its figures come from. */
  readonly from: readonly string[];
}

/** What can be made of the chart in sight: a picture, a drawing, a chart of the spreadsheet's own. */
export function chartActions(host: PaneHost, shown: () => Shown): { element: HTMLElement; clear(): void } {
  const answer = element('div', { class: 'jw-answer', role: 'status' });
  const tell = (done: Done, words: string): void => answer.replaceChildren(...(done.done ? [element('p', { class: 'jw-good' }, words)] : [
    element('p', { class: 'jw-reason' }, done.words),
    ...(done.instead ? [button(done.instead.label, done.instead.act)] : []),
  ]));

  const save = async (ending: 'png' | 'svg'): Promise<void> => {
    const { plot } = shown();
    const scene = plot && sceneOf(plot, FILE_SIZE);
    if (!plot || !scene) return;
    savePicture(fileName(plot.title, ending), ending === 'png' ? await pngFile(scene) : new Blob([svgFile(scene, plot.title)], { type: 'image/svg+xml' }));
    tell({ done: true }, `${fileName(plot.title, ending)} is handed to the downloads.`);
  };

  const intoSheet = async (): Promise<void> => {
    const { plot, from } = shown();
    if (!plot) return;
    const taken = (await host.sheets()).map((name) => name.toLowerCase());
    let number = 1;
    while (taken.includes(`chart ${number}`)) number += 1;
    const made = chartSheet(plot, from, `Chart ${number}`);
    if (!made) return;
    const inserted = await host.insertSheets([made.sheet]);
    tell(inserted.done ? await host.chart(made.chart) : inserted, `Drawn on the new sheet ${made.sheet.name}, with its figures.`);
  };

  const guarded = (work: () => Promise<void>) => (): void => void work().catch(() => tell({ done: false, words: 'That could not be done just now. Finish what is being typed in a cell, then try again.' }, ''));
  return {
    element: element('div', { class: 'jw-actions' },
      button('Save PNG', guarded(() => save('png'))), button('Save SVG', guarded(() => save('svg'))), button('Chart in the sheet', guarded(intoSheet)), answer),
    clear: () => answer.replaceChildren(),
  };
}
