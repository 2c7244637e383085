import { blank } from './blank.js';
import { book } from './book.js';
import { check } from './check.js';
import type { AnyCommand } from './command.js';
import { completionOf } from './completion.js';
import { gallery } from './gallery.js';
import { hold } from './hold.js';
import { newOrder } from './new.js';
import { plan } from './plan.js';
import { rack } from './rack/index.js';

const others: readonly AnyCommand[] = [newOrder, plan, blank, check, rack, hold, book, gallery];

/** Every command, in the order of the help text. */
export const commands: readonly AnyCommand[] = [...others, completionOf(others)];
