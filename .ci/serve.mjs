/** Serves the production build, compressed, with correct types. Node built-ins only. */
import { readFile, realpath } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const folder = fileURLToPath(new URL('../dist/app', import.meta.url));

/** @type {Readonly<Record<string, string>>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.yaml': 'application/yaml; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.mp3': 'audio/mpeg',
  '.ogg': 'audio/ogg',
  '.wav': 'audio/wav',
  '.webm': 'audio/webm',
};
const compressible = /^text\/|json|svg|yaml/;

/**
 * A file of the build, read at the time it is asked for: a build that is renewed while the server runs shows at once.
 * @param {string} url
 */
async function find(url) {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    const file = await realpath(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    if (!file.startsWith((await realpath(folder)) + sep)) return undefined;
    return { body: await readFile(file), type: types[extname(file)] ?? 'application/octet-stream' };
  } catch {
    return undefined;
  }
}

/** @type {Map<string, { plain: Buffer, packed: Buffer }>} */
const packedBodies = new Map();

/**
 * The body as the browser accepts it; compressed once for each content.
 * @param {Buffer} plain
 * @param {string} accepted
 */
function pack(plain, accepted) {
  const encoding = /\bbr\b/.test(accepted) ? 'br' : /\bgzip\b/.test(accepted) ? 'gzip' : undefined;
  if (!encoding) return { body: plain, encoding };
  const key = `${encoding}:${plain.length}`;
  const known = packedBodies.get(key);
  if (known?.plain.equals(plain)) return { body: known.packed, encoding };
  const packed =
    encoding === 'br'
      ? brotliCompressSync(plain, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } })
      : gzipSync(plain, { level: 9 });
  packedBodies.set(key, { plain, packed });
  return { body: packed, encoding };
}

/**
 * Starts the server.
 * @param {{ port: number, host?: string }} at port 0 takes a free one
 * @returns {Promise<{ address: string, close: () => Promise<void> }>} the address to open, and how to stop
 * @throws {Error} `code` EADDRINUSE if the port is taken; never moves to another one by itself
 */
export async function serve({ port, host = '127.0.0.1' }) {
  const server = createServer(async (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    const file = await find(request.url ?? '/');
    if (!file) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Nothing here.\n');
      return;
    }
    const accepted = compressible.test(file.type) ? String(request.headers['accept-encoding'] ?? '') : '';
    const { body, encoding } = pack(file.body, accepted);
    const hashed = request.url?.startsWith('/assets/') ?? false;
    response.writeHead(200, {
      'Content-Type': file.type,
      'Content-Length': body.length,
      'Cache-Control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
      'X-Content-Type-Options': 'nosniff',
      Vary: 'Accept-Encoding',
      ...(encoding ? { 'Content-Encoding': encoding } : {}),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, host, exclusive: true }, () => resolve(undefined));
  });
  const bound = server.address();
  const taken = typeof bound === 'object' && bound ? bound.port : port;
  return {
    address: `http://${host}:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
