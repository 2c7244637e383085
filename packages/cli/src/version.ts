/** The version of the package, as in its package.json. */
export const VERSION = '0.1.0';
