/** A chart as a file on the reader's own disk. Nothing leaves the page. */
import { standalonePicture, type PictureParts } from './standalone-picture.ts';

const PNG_SCALE = 2;

/** Saves as a PNG when the name says so, as SVG otherwise. */
export async function savePicture(parts: PictureParts, fileName: string): Promise<void> {
  const { svg, width, height } = standalonePicture(parts);
  if (!fileName.endsWith('.png')) return saveText(svg, 'image/svg+xml', fileName);
  save(await rasterised(svg, width, height), fileName);
}

export function saveText(text: string, type: string, fileName: string): void {
  save(new Blob([text], { type: `${type};charset=utf-8` }), fileName);
}

async function rasterised(svg: string, width: number, height: number): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width * PNG_SCALE;
  canvas.height = height * PNG_SCALE;
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be made'))),
      'image/png',
    ),
  );
}

/** @param type media type */
export function saveBytes(bytes: Uint8Array, type: string, fileName: string): void {
  save(new Blob([bytes as BlobPart], { type }), fileName);
}

function save(blob: Blob, fileName: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
