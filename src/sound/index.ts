export { openSound, type Caption, type Sound } from './sound.ts';
