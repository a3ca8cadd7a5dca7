import 'pixi.js/unsafe-eval';
import { autoDetectRenderer, type Renderer } from 'pixi.js';

/** No way to draw was found; the words and the drawings by themselves stand in for the picture. */
class NothingDrawsError extends Error {
  override readonly name = 'NothingDrawsError';
}

/** Which way of drawing suits this machine: WebGL on a graphics card, canvas where WebGL would be computed by the processor. */
export function suitable(): 'webgl' | 'canvas' {
  const context = document.createElement('canvas').getContext('webgl2');
  if (!context) return 'canvas';
  const info = context.getExtension('WEBGL_debug_renderer_info');
  const maker = String(context.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : context.RENDERER));
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return /SwiftShader|llvmpipe|softpipe|Basic Render|Software/i.test(maker) ? 'canvas' : 'webgl';
}

/** Opens a renderer; falls from WebGL to canvas by itself.
 *  @throws NothingDrawsError if neither can be had */
export async function openRenderer(
  preference: 'webgl' | 'canvas',
  resolution: number,
  background: string,
): Promise<Renderer> {
  try {
    return await autoDetectRenderer({
      preference: preference === 'webgl' ? ['webgl', 'canvas'] : ['canvas'],
      resolution,
      autoDensity: true,
      antialias: true,
      background,
      eventMode: 'none',
      hello: false,
    });
  } catch (cause) {
    throw new NothingDrawsError('This browser gives neither WebGL nor a 2D canvas to draw on.', { cause });
  }
}
