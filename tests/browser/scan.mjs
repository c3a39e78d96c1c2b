// Reads a QR code from the page as a phone would.
import { createRequire } from "node:module";

const jsQR = createRequire(import.meta.url)("jsqr");

/** What a reader of its own sees in a picture of the page. */
export async function scan(bench, picture) {
  const png = (await picture.screenshot()).toString("base64");
  // A page without a policy of its own unpacks it.
  const blank = await bench.page.context().newPage();
  const { data, width, height } = await blank.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
    canvas.drawImage(image, 0, 0);
    const { data, width, height } = canvas.getImageData(0, 0, image.width, image.height);
    return { data: [...data], width, height };
  }, png);
  await blank.close();
  return jsQR(Uint8ClampedArray.from(data), width, height)?.data;
}
