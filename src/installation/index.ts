export { installationJsonSchema, installationSchema, type Installation } from './installation.ts';
export { type Condition, type Conditions } from './conditions.ts';
export { type Part } from './parts/index.ts';
export { type Region } from './plan.ts';
export { EARTH } from './terminal.ts';
export { type BranchInfo, type Build, type DeviceInfo, type PersonInfo } from './build.ts';
export { type Role } from './role.ts';
export { printDiagnostics, printEach, type Diagnostic } from './diagnostic.ts';
export { compile } from './compile.ts';
export { readInstallation } from './read.ts';
export { initialConditions, setConditions } from './choose.ts';
/** For other files that people write, such as lessons: the same reading, the same complaints. */
export { readDocument, type WrittenDocument } from './document.ts';
export { shapeDiagnostics } from './shape.ts';
export { nearest } from './nearest.ts';
