export { openScene } from './openScene.ts';
export { NothingDrawsError } from './renderer.ts';
export type { Scene, SceneOptions, Theme } from './scene.ts';
