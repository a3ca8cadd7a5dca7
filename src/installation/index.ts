export { installationJsonSchema, installationSchema, type Installation, type Join } from './installation.ts';
export { type Condition, type ConditionGroup, type Conditions } from './conditions.ts';
export { type Part } from './parts/index.ts';
export { type Region } from './plan.ts';
export { EARTH, type TerminalName } from './terminal.ts';
export { type BranchInfo, type Build, type DeviceInfo, type Medium, type PersonInfo, type Role } from './build.ts';
export { printDiagnostics, type Diagnostic, type DiagnosticCode } from './diagnostic.ts';
