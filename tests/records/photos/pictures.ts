import sharp from 'sharp';

/** Pictures for tests, all made here: nothing in them is of anything. */
export function stripes(width = 60, height = 40) {
  const pixels = Buffer.alloc(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const x = i % width;
    pixels[3 * i] = x < width / 2 ? 230 : 20;
    pixels[3 * i + 1] = Math.floor(i / width) < height / 2 ? 200 : 40;
    pixels[3 * i + 2] = 90;
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

export const jpeg = (width?: number, height?: number) => stripes(width, height).jpeg().toBuffer();
export const png = () => stripes().png().toBuffer();
export const webp = () => stripes().webp().toBuffer();

/** Taken with the camera on its side, by a camera that says where it stood. */
export function jpegOnItsSide(): Promise<Buffer> {
  return stripes(60, 40)
    .withExif({
      IFD0: { Copyright: 'nobody at all' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '12/1 34/1 56/1' },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();
}

/** A JPEG of 13 MB: real, and too large. */
export async function jpegOf13Mb(): Promise<Buffer> {
  return Buffer.concat([await jpeg(), Buffer.alloc(13 * 1024 * 1024, 7)]);
}
