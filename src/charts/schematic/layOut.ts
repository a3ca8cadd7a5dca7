import Elk from 'elkjs/lib/elk-api.js';
import engine from 'elkjs/lib/elk-worker.min.js?url';
import type { Graph, Laid } from '../../depiction/index.ts';

/** Places the boxes and routes the wires, in a thread of its own that is given back afterwards. */
export async function layOut(graph: Graph): Promise<Laid> {
  const elk = new Elk({ workerFactory: () => new Worker(engine) });
  try {
    return (await elk.layout(structuredClone(graph))) as Laid;
  } finally {
    elk.terminateWorker();
  }
}
