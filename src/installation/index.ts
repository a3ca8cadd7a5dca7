export { installationJsonSchema, installationSchema, type Installation, type Join } from './installation.ts';
export { type Condition, type ConditionGroup, type Conditions } from './conditions.ts';
export { type Part } from './parts/index.ts';
export { type Region } from './plan.ts';
export { EARTH, type TerminalName } from './terminal.ts';
export { type BranchInfo, type Build, type DeviceInfo, type PersonInfo } from './build.ts';
export { type Medium, type Role } from './role.ts';
export { printDiagnostics, type Diagnostic, type DiagnosticCode } from './diagnostic.ts';
export { compile } from './compile.ts';
export { readInstallation, type Reading } from './read.ts';
export { initialConditions, setConditions, type ChosenConditions } from './choose.ts';
/** For other files that people write, such as lessons: the same reading, the same complaints. */
export { readDocument, type WrittenDocument } from './document.ts';
export { type DocumentPath } from './documentPlaces.ts';
export { shapeDiagnostics } from './shape.ts';
export { nearest } from './nearest.ts';
