/** An installation of ours, read and checked when building: a wrong file fails the build. */
declare module '*.yaml?place' {
  export const installation: import('../installation/index.ts').Installation;
}

/** The title of an installation of ours. */
declare module '*.yaml?title' {
  export const title: string;
}

/** A lesson of ours, read, checked and proven when building. */
declare module '*.yaml?lesson' {
  export const lesson: import('../lesson/index.ts').Lesson;
}

/** Where everything stands and runs in a drawn place, read when building. */
declare module '*.json?drawn' {
  const place: import('../depiction/index.ts').DrawnPlace;
  export default place;
}

/** The SVGs of a drawn place by their path under assets/, without the ending. */
declare module '*.json?sheets' {
  const sheets: Readonly<Record<string, string>>;
  export default sheets;
}
