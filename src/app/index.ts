/** The page: Explore, Learn, Demonstrate. */
import './styles.ts';
export { App } from './App.tsx';
export { fetchPlace } from './places.ts';
