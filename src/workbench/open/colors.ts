import { type XmlElement, childNamed } from '../../sheet/xlsx/xml/tree';

/** Colours of a workbook as `#rrggbb`. */

type Rgb = readonly [number, number, number];

/** Order in which cells count the colours of a theme. */
const THEME_ORDER = ['lt1', 'dk1', 'lt2', 'dk2', 'accent1', 'accent2', 'accent3', 'accent4', 'accent5', 'accent6', 'hlink', 'folHlink'];
const OFFICE_THEME = ['FFFFFF', '000000', 'E7E6E6', '44546A', '4472C4', 'ED7D31', 'A5A5A5', 'FFC000', '5B9BD5', '70AD47', '0563C1', '954F72'];

/** The fixed palette of the format; 64 and 65 are the system's text and window colours. */
const PALETTE = [
  '000000', 'FFFFFF', 'FF0000', '00FF00', '0000FF', 'FFFF00', 'FF00FF', '00FFFF', '000000', 'FFFFFF', 'FF0000', '00FF00', '0000FF', 'FFFF00', 'FF00FF', '00FFFF',
  '800000', '008000', '000080', '808000', '800080', '008080', 'C0C0C0', '808080', '9999FF', '993366', 'FFFFCC', 'CCFFFF', '660066', 'FF8080', '0066CC', 'CCCCFF',
  '000080', 'FF00FF', 'FFFF00', '00FFFF', '800080', '800000', '008080', '0000FF', '00CCFF', 'CCFFFF', 'CCFFCC', 'FFFF99', '99CCFF', 'FF99CC', 'CC99FF', 'FFCC99',
  '3366FF', '33CCCC', '99CC00', 'FFCC00', 'FF9900', 'FF6600', '666699', '969696', '003366', '339966', '003300', '333300', '993300', '993366', '333399', '333333',
];

export type Colors = (element: XmlElement | undefined) => string | undefined;

const HEX = /^[0-9a-f]{6}$/i;
const hex = (text: string): string | undefined => (HEX.test(text) ? `#${text.toLowerCase()}` : undefined);

function themeColors(theme: XmlElement | undefined): readonly string[] {
  const scheme = childNamed(childNamed(theme, 'themeElements'), 'clrScheme');
  return THEME_ORDER.map((name, place) => {
    const color = childNamed(scheme, name)?.children[0]?.attributes;
    const value = color?.get('lastClr') ?? color?.get('val') ?? '';
    return HEX.test(value) ? value : OFFICE_THEME[place]!;
  });
}

/** Lightens (tint above 0) or darkens a colour by its lightness, as the format prescribes. */
function tinted(color: string, tint: number): string {
  const rgb = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255) as unknown as Rgb;
  const [max, min] = [Math.max(...rgb), Math.min(...rgb)];
  const lightness = (max + min) / 2;
  const target = tint < 0 ? lightness * (1 + tint) : lightness * (1 - tint) + tint;
  const spread = max - min;
  const saturation = spread === 0 ? 0 : spread / (1 - Math.abs(2 * lightness - 1));
  const chroma = (1 - Math.abs(2 * target - 1)) * saturation;
  const scaled = rgb.map((part) => (spread === 0 ? target : target + (part - lightness) * (chroma / spread)));
  return `#${scaled.map((part) => Math.round(Math.min(1, Math.max(0, part)) * 255).toString(16).padStart(2, '0')).join('')}`;
}

/** Reads colour elements (`<color>`, `<fgColor>` …); undefined where the program's own colour is meant. */
export function colorReader(theme: XmlElement | undefined): Colors {
  const ofTheme = themeColors(theme);
  return (element) => {
    const attributes = element?.attributes;
    if (!attributes) return undefined;
    const [rgb, place, index] = [attributes.get('rgb'), attributes.get('theme'), attributes.get('indexed')];
    const base = rgb !== undefined ? hex(rgb.slice(-6)) : place !== undefined ? hex(ofTheme[Number(place)] ?? '') : index !== undefined ? hex(PALETTE[Number(index)] ?? '') : undefined;
    const tint = Number(attributes.get('tint') ?? 0);
    return base === undefined || !(Math.abs(tint) <= 1) || tint === 0 ? base : tinted(base, tint);
  };
}
