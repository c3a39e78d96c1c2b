// Reads a ZIP by its central directory, as any reader does.
// Source: PKWARE, APPNOTE.TXT, 4.3.12 and 4.3.16: where the records are and what is in them.
import { inflateRawSync } from "node:zlib";

const END = 0x06054b50;

/** The files of a ZIP: what is in them by path. */
export function unzipped(zip) {
  let end = zip.length - 22;
  while (zip.readUInt32LE(end) !== END) end -= 1;
  const files = new Map();
  let at = zip.readUInt32LE(end + 16);
  for (let left = zip.readUInt16LE(end + 10); left > 0; left -= 1) {
    const [method, packed] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 20)];
    const [name, extra, comment] = [28, 30, 32].map((place) => zip.readUInt16LE(at + place));
    const path = zip.subarray(at + 46, at + 46 + name).toString("utf8");
    const local = zip.readUInt32LE(at + 42);
    const from = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const bytes = zip.subarray(from, from + packed);
    const file = method === 8 ? inflateRawSync(bytes) : bytes;
    files.set(path, file);
    at += 46 + name + extra + comment;
  }
  return files;
}
