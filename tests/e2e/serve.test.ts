import { request } from 'node:http';
import { expect, inject, test } from 'vitest';
import { serve } from '../../.ci/serve.mjs';

/** A path sent exactly as it stands, which fetch would tidy up first. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET') {
  const { hostname, port } = new URL(inject('address'));
  return new Promise<{ status: number; headers: Record<string, unknown>; bytes: number }>((resolve, reject) => {
    request({ hostname, port, path, headers, method }, (response) => {
      let bytes = 0;
      response.on('data', (chunk: Buffer) => (bytes += chunk.length));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, bytes }));
    })
      .on('error', reject)
      .end();
  });
}

test('the page comes compressed when the browser can read that, and plain when it cannot', async () => {
  const plain = await ask('/');
  expect(plain.status).toBe(200);
  expect(plain.headers).toMatchObject({ 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-cache' });
  expect(plain.headers).not.toHaveProperty('content-encoding');
  for (const encoding of ['br', 'gzip']) {
    const packed = await ask('/', { 'accept-encoding': encoding });
    expect(packed.headers).toHaveProperty('content-encoding', encoding);
    expect(packed.bytes).toBeLessThan(plain.bytes);
  }
});

test('nothing outside the build is handed out', async () => {
  const paths = ['/../../package.json', '/..%2f..%2fpackage.json', '/%2e%2e/cli/ohmward.js', '/%00', '/%', '/assets'];
  for (const path of paths) expect(await ask(path), path).toMatchObject({ status: 404 });
  expect(await ask('/', {}, 'POST')).toMatchObject({ status: 405 });
});

test('a taken port is refused, never left for another one', async () => {
  const port = Number(new URL(inject('address')).port);
  await expect(serve({ port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
