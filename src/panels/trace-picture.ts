import type { Colours } from './trace-lines.ts';
import type { Paper, PaperMark } from './trace-paper.ts';

/** Room for the title above and the caution below, in heights of the words. */
const TITLE = 2.2;
const FOOT = 2;

/** The traces as a picture, as they stand on the page: lines, words, title and caution. @throws {Error} when the browser makes none */
export async function tracePicture(
  doc: Document,
  plot: HTMLCanvasElement,
  marks: readonly PaperMark[],
  {
    paper,
    colours,
    title,
    caution,
    font,
  }: { paper: Paper; colours: Colours; title: string; caution: string; font: string },
): Promise<Uint8Array> {
  const { widthPx, heightPx, left, top, right, bottom, textPx } = paper;
  const scale = plot.width / Math.round(right - left);
  const canvas = doc.createElement('canvas');
  canvas.width = Math.round(widthPx * scale);
  canvas.height = Math.round((heightPx + (TITLE + FOOT) * textPx) * scale);
  const context = canvas.getContext('2d')!;
  context.scale(scale, scale);
  context.fillStyle = colours.paper;
  context.fillRect(0, 0, canvas.width, canvas.height);
  const write = (words: string, px: number, bold: boolean) => {
    context.font = `${bold ? 600 : 400} ${px}px ${font}`;
    return words;
  };
  context.fillStyle = colours.ink;
  context.fillText(write(title, textPx * 1.15, true), 10, textPx * 1.5);
  context.fillStyle = colours.secondary;
  context.fillText(write(caution, textPx * 0.85, false), 10, heightPx + (TITLE + FOOT * 0.6) * textPx, widthPx - 20);
  context.translate(0, TITLE * textPx);
  context.drawImage(plot, left, top, right - left, bottom - top);
  for (const mark of marks) {
    if (mark.kind === 'dot') {
      context.fillStyle = colours.ink;
      context.beginPath();
      context.arc(mark.x, mark.y, mark.px, 0, 2 * Math.PI);
      context.fill();
    } else if (mark.kind === 'line') {
      context.strokeStyle = colours[mark.tone];
      context.lineWidth = mark.widthPx;
      context.beginPath();
      context.moveTo(...mark.from);
      context.lineTo(...mark.to);
      context.stroke();
    } else {
      context.fillStyle = colours[mark.tone];
      context.textAlign = mark.anchor === 'middle' ? 'center' : mark.anchor;
      context.fillText(write(mark.words, mark.px, mark.bold), mark.x, mark.y);
    }
  }
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!blob) throw new Error('this browser made no picture');
  return new Uint8Array(await blob.arrayBuffer());
}
