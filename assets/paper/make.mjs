// Makes grain.png: a paper grain of 128 × 128 px that tiles without a seam. Run: node assets/paper/make.mjs
// Grey with alpha: black and white specks and short fibres; the scene lays it over every sheet at 4–7 %.
import { writeFileSync } from 'node:fs';
import { crc32, deflateSync } from 'node:zlib';

const SIZE = 128;
const FIBRES = 260;

let state = 20251;
/** The next number of a fixed sequence, 0 to 1, so that the file comes out the same every time. */
function next() {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

const height = Float64Array.from({ length: SIZE * SIZE }, () => (next() - 0.5) * 0.9);
for (let fibre = 0; fibre < FIBRES; fibre += 1) {
  const angle = next() * Math.PI;
  const length = 4 + next() * 9;
  const rise = next() - 0.5;
  const [x, y] = [next() * SIZE, next() * SIZE];
  for (let along = 0; along < length; along += 1) {
    const column = Math.floor(x + Math.cos(angle) * along + SIZE) % SIZE;
    const row = Math.floor(y + Math.sin(angle) * along + SIZE) % SIZE;
    height[row * SIZE + column] += rise * 1.6;
  }
}

const rows = Buffer.alloc(SIZE * (1 + SIZE * 2));
for (let row = 0; row < SIZE; row += 1)
  for (let column = 0; column < SIZE; column += 1) {
    const value = Math.max(-1, Math.min(1, height[row * SIZE + column]));
    const at = row * (1 + SIZE * 2) + 1 + column * 2;
    rows[at] = value > 0 ? 255 : 0;
    rows[at + 1] = Math.round(Math.abs(value) * 8) * 31;
  }

/** One chunk of a PNG file (PNG specification, third edition, section 5.3). */
function chunk(kind, data) {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}

const header = Buffer.alloc(13);
header.writeUInt32BE(SIZE, 0);
header.writeUInt32BE(SIZE, 4);
header.set([8, 4, 0, 0, 0], 8);
const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const file = Buffer.concat([
  signature,
  chunk('IHDR', header),
  chunk('IDAT', deflateSync(rows, { level: 9 })),
  chunk('IEND', Buffer.alloc(0)),
]);
writeFileSync(new URL('grain.png', import.meta.url), file);
