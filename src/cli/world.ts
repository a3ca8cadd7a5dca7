/** What a command needs of the computer, so that it can be run in a test without one. */
export interface World {
  /** Text of a file. @throws an Error saying why it cannot be read */
  read(file: string): string;
  /** Names in a folder. @throws an Error saying why it cannot be listed */
  list(folder: string): readonly string[];
  print(text: string): void;
  complain(text: string): void;
  /** Columns of the terminal. */
  readonly columns: number;
}

/** How a command ends: 0 fine; 1 a file is wrong or a lesson not proven; 2 wrong use. */
export type ExitCode = 0 | 1 | 2;

/** Wrong use of the program: printed with a hint at the help, exit code 2. */
export class WrongUse extends Error {
  override readonly name = 'WrongUse';
}

/** Text of a file somebody named. @throws WrongUse if it cannot be read */
export function readNamed(world: World, file: string): string {
  try {
    return world.read(file);
  } catch (error) {
    throw new WrongUse(`${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}
