/**
 * The page opens a place that was read and checked while building, so it needs no schemas; only a file that somebody opens
 * does. This keeps zod out of the first chunk although each kind of part states its schema beside its plan: the reader gets
 * an installation room of its own, with schemas, and in everybody else's a schema is an empty word that refuses to read.
 */
const READER = '?reader';
const HOLLOW = '\0hollow-zod';

const hollow = `
const refuse = (name) => () => { throw new Error('zod.' + name + ': the page\\'s first chunk holds no schemas; read files by src/app/openFile.ts'); };
const READS = new Set(['parse', 'safeParse', 'parseAsync', 'safeParseAsync', 'toJSONSchema']);
export const z = new Proxy(function () {}, {
  get: (_, name) => (typeof name === 'symbol' ? undefined : READS.has(name) ? refuse(name) : z),
  apply: () => z,
});
`;

/**
 * @param {{ readonly reader: RegExp, readonly room: RegExp }} where the module that reads files, and the rooms whose schemas it needs
 * @returns {import('vite').Plugin}
 */
export function readerApart({ reader, room }) {
  return {
    name: 'reader-apart',
    apply: 'build',
    enforce: 'pre',
    async resolveId(source, importer, options) {
      if (!importer) return undefined;
      const inside = importer.endsWith(READER);
      const from = inside ? importer.slice(0, -READER.length) : importer;
      if (source === 'zod') return !inside && room.test(from) ? HOLLOW : undefined;
      if (!inside && !reader.test(from)) return undefined;
      const found = await this.resolve(source, from, { ...options, skipSelf: true });
      return found && room.test(found.id) ? `${found.id}${READER}` : found;
    },
    load: (id) => (id === HOLLOW ? hollow : undefined),
  };
}
