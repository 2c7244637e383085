import { nodeFiles } from '../node-environment.js';
import { putPacket } from './whole-packet.js';

// Run as a program: writes a packet of the given mark into a folder, again and again with
// more and fewer files, until it is killed.
const [, , folder = ''] = process.argv;
for (let round = 1; ; round++) {
  const mark = `${round}`.repeat(2000);
  const packet = Array.from({ length: 3 + (round % 5) }, (_, index) => ({
    name: `cut-map-${index + 1}.svg`,
    text: mark,
  }));
  await putPacket(folder, packet, (name) => name.startsWith('cut-map-'), nodeFiles);
  process.stdout.write('.');
}
