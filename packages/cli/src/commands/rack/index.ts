import type { CommandGroup } from '../command.js';
import { add } from './add.js';
import { correct } from './correct.js';
import { draw } from './draw.js';
import { exportRack } from './export.js';
import { history } from './history.js';
import { importRack } from './import.js';
import { keep } from './keep.js';
import { list } from './list.js';
import { receive } from './receive.js';
import { remove } from './remove.js';
import { worth } from './worth.js';

/** `stripwright rack`: the shop's offcuts and whole sheets. */
export const rack: CommandGroup = {
  name: 'rack',
  summary: 'keep the rack of offcuts and whole sheets: list it, add to it, correct it',
  actions: [
    add,
    receive,
    list,
    draw,
    correct,
    remove,
    history,
    worth,
    keep,
    exportRack,
    importRack,
  ],
};
