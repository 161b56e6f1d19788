import { paperColour } from './inks';
import type { Scene, Shape } from './shapes';

/** Pixels of the picture for one of the scene, so that it stays sharp on paper. */
const SHARPNESS = 2;

function draw(context: CanvasRenderingContext2D, shape: Shape): void {
  if (shape.kind === 'text') {
    context.font = `${shape.bold ? '600 ' : ''}${shape.size}px "Segoe UI", "Helvetica Neue", Helvetica, Arial, sans-serif`;
    context.textAlign = shape.anchor === 'middle' ? 'center' : shape.anchor === 'end' ? 'right' : 'left';
    context.fillStyle = paperColour(shape.ink);
    context.fillText(shape.text, shape.x, shape.y);
    return;
  }
  const path = new Path2D(shape.path);
  if (shape.fill !== undefined) {
    context.globalAlpha = shape.opacity ?? 1;
    context.fillStyle = paperColour(shape.fill);
    context.fill(path);
    context.globalAlpha = 1;
  }
  if (shape.stroke !== undefined) {
    context.strokeStyle = paperColour(shape.stroke);
    context.lineWidth = shape.width ?? 1;
    context.lineJoin = 'round';
    context.setLineDash([...(shape.dash ?? [])]);
    context.stroke(path);
  }
}

/** The scene as the bytes of a PNG file. */
export async function pngFile({ width, height, shapes }: Scene): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = width * SHARPNESS;
  canvas.height = height * SHARPNESS;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser gives no canvas to draw on');
  context.scale(SHARPNESS, SHARPNESS);
  context.fillStyle = paperColour('ground');
  context.fillRect(0, 0, width, height);
  for (const shape of shapes) draw(context, shape);
  return new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be made'))), 'image/png'));
}
