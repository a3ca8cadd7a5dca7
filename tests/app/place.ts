import { compile } from '../../src/installation/index.ts';
import type { Place } from '../../src/app/desk.ts';
import '../depiction/drawnPlaces.ts';
import { bakeryText, installationFrom } from '../installation/places.ts';

/** The bakery as the page opens it. */
export const bakery: Place = { id: 'bakery', title: 'The bakery', build: compile(installationFrom(bakeryText)) };
