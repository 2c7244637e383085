import { describe, expect, it } from 'vitest';
import { usualRackOf } from './usual-rack.js';

// Linux: XDG Base Directory Specification 0.8, XDG_DATA_HOME and its default; the other
// systems' folders from memory.
describe('the rack of a user who names none', () => {
  it.each([
    ['linux', {}, '/home/baker', '/home/baker/.local/share/stripwright/rack.sqlite'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/home/baker', '/data/stripwright/rack.sqlite'],
    ['linux', { XDG_DATA_HOME: 'data' }, '/h', '/h/.local/share/stripwright/rack.sqlite'],
    ['linux', { XDG_DATA_HOME: '' }, '/h', '/h/.local/share/stripwright/rack.sqlite'],
    ['darwin', {}, '/Users/b', '/Users/b/Library/Application Support/stripwright/rack.sqlite'],
    ['win32', { APPDATA: '/roaming' }, '/b', '/roaming/stripwright/rack.sqlite'],
    ['win32', {}, '/b', '/b/AppData/Roaming/stripwright/rack.sqlite'],
  ] as const)('on %s with %j', (platform, variables, home, path) => {
    expect(usualRackOf(platform, variables, home)).toBe(path);
  });
});
