import { lazy } from 'react';

const picture = () => import('./Picture.tsx');

/** The picture, which comes after the words. */
export const Picture = lazy(async () => ({ default: (await picture()).Picture }));

/** The profile by itself. */
export const NarrowProfile = lazy(async () => ({ default: (await picture()).NarrowProfile }));
