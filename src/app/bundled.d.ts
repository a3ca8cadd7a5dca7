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
