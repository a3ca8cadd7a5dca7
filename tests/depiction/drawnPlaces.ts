/** Importing this makes the drawings of all places known, as the page does when it opens one. */
import { drawnPlaceNames, readDrawnPlace } from '../../.ci/drawnPlaces.mjs';
import { enterDrawing } from '../../src/depiction/index.ts';

for (const name of drawnPlaceNames()) enterDrawing(name, readDrawnPlace(name));
