import type { Page } from 'playwright-core';

/** Texts of the pane whose contrast with their ground is below 4.5 to 1; disabled controls and texts inside pictures by their own colour. */
export const faintTexts = (page: Page): Promise<string[]> => page.evaluate(() => {
  const parts = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const light = (colour: string): number => {
    const [r, g, b] = parts(colour).map((value) => { const c = value / 255; return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4; });
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  const groundOf = (element: Element | null): string => {
    for (let each = element; each; each = each.parentElement) {
      const ground = getComputedStyle(each).backgroundColor;
      if (parts(ground)[3] !== 0) return ground;
    }
    return 'rgb(255, 255, 255)';
  };
  const withText = (each: Element): boolean => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== '') || (each instanceof HTMLInputElement && each.type === 'text');
  return [...document.querySelectorAll('#pane *')].filter((each) => withText(each) && !each.closest('[hidden], option') && (each as HTMLElement).getClientRects().length > 0).flatMap((each) => {
    const [a, b] = [light(getComputedStyle(each).color), light(groundOf(each))];
    const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    return contrast < 4.5 ? [`${each.tagName} ${each.getAttribute('class') ?? ''} "${each.textContent!.slice(0, 20)}" ${contrast.toFixed(2)}`] : [];
  });
});
