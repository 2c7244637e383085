import { join } from 'node:path';

/** The rack of a user who names none, within the folder that the system has for data of programs. */
const NAME = join('stripwright', 'rack.sqlite');

/**
 * Where the rack of a user lies who names none: on Linux as the XDG Base Directory
 * Specification has it, elsewhere in the system's folder for data of programs.
 */
export function usualRackOf(
  platform: NodeJS.Platform,
  variables: Readonly<Record<string, string | undefined>>,
  home: string,
): string {
  if (platform === 'win32') {
    return join(variables.APPDATA || join(home, 'AppData', 'Roaming'), NAME);
  }
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', NAME);
  const folder = variables.XDG_DATA_HOME ?? '';
  // The specification has paths that are not absolute ignored.
  return join(folder.startsWith('/') ? folder : join(home, '.local', 'share'), NAME);
}
