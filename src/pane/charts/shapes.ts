import type { Ink } from './inks';

/** A chart as shapes on a sheet of pixels, which every way of showing it draws alike. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}
export type Shape = PathShape | TextShape;
export interface PathShape {
  readonly kind: 'path';
  /** In the language of SVG paths, which canvases speak too. */
  readonly path: string;
  readonly stroke?: Ink;
  readonly fill?: Ink;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly opacity?: number;
}
export interface TextShape {
  readonly kind: 'text';
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly ink: Ink;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: true;
}

export const pixel = (value: number): number => Math.round(value * 100) / 100;
export const straight = (x0: number, y0: number, x1: number, y1: number): string => `M${pixel(x0)},${pixel(y0)}L${pixel(x1)},${pixel(y1)}`;
export const circle = (x: number, y: number, r: number): string => `M${pixel(x + r)},${pixel(y)}A${r},${r},0,1,1,${pixel(x - r)},${pixel(y)}A${r},${r},0,1,1,${pixel(x + r)},${pixel(y)}Z`;
export const diamond = (x: number, y: number, r: number): string => `M${pixel(x)},${pixel(y - r)}L${pixel(x + r)},${pixel(y)}L${pixel(x)},${pixel(y + r)}L${pixel(x - r)},${pixel(y)}Z`;

/** Letters of the usual faces are about so wide, in sizes of the letter. */
export const LETTER = 0.56;
/** A text cut to the room that it has. */
export function fitted(text: string, width: number, size: number): string {
  const letters = Math.max(4, Math.floor(width / (size * LETTER)));
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`;
}
