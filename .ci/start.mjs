/**
 * `npm start`: builds if needed, serves the production build and prints its address. Asks nothing.
 * PORT takes exactly that port; without it 4173, or the next free one. HOST (127.0.0.1) may open it to the network.
 */
import { ensureBuilt } from './built.mjs';
import { serve } from './serve.mjs';

const FIRST = 4173;
const { PORT, HOST } = process.env;

/** @returns {never} */
function stop(/** @type {string} */ why) {
  process.stderr.write(`${why}\n`);
  process.exit(1);
}

if (PORT !== undefined && !(/^\d{1,5}$/.test(PORT) && Number(PORT) <= 65535))
  stop(`PORT is "${PORT}"; it must be a number from 0 to 65535.`);

try {
  ensureBuilt();
} catch (error) {
  stop(error instanceof Error ? error.message : String(error));
}

const ports = PORT ? [Number(PORT)] : Array.from({ length: 50 }, (_, index) => FIRST + index);
for (const port of ports) {
  try {
    const { address, close } = await serve({ port, ...(HOST ? { host: HOST } : {}) });
    if (!PORT && port !== FIRST) console.log(`Port ${FIRST} is taken, so this is on ${port}.`);
    console.log(`Ohmward is at ${address} (Ctrl+C stops it)`);
    for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void close().then(() => process.exit(0)));
    break;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code !== 'EADDRINUSE') stop(`Cannot listen on port ${port}: ${String(error)}`);
    if (PORT) stop(`Port ${port} is taken. Choose another: PORT=${port + 1} npm start`);
    if (port === ports.at(-1)) stop(`Ports ${FIRST} to ${port} are all taken. Choose one: PORT=8080 npm start`);
  }
}
