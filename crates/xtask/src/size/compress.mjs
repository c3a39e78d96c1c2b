// Compresses each file of a folder with Node's own zlib and says what came out:
//   node compress.mjs FOLDER          prints one line per file: path, raw, gzip -9, brotli 11
//   node compress.mjs FOLDER --write  also writes FILE.br beside each file that gets smaller by it
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const [folder, write] = process.argv.slice(2);
const packed = /\.(br|woff2|png|jpg|webp|avif)$/;

const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && !entry.name.endsWith('.br'))
  .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
  .sort();

for (const file of files) {
  const raw = readFileSync(file);
  const gzip = gzipSync(raw, { level: 9 });
  const brotli = brotliCompressSync(raw, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_LGWIN]: 24,
      [constants.BROTLI_PARAM_SIZE_HINT]: raw.length,
    },
  });
  if (write === '--write' && !packed.test(file) && brotli.length < raw.length) {
    writeFileSync(`${file}.br`, brotli);
  }
  const path = relative(folder, file).split(sep).join('/');
  console.log([path, raw.length, gzip.length, brotli.length].join('\t'));
}
