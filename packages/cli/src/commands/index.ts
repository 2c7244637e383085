import { blank } from './blank.js';
import { book } from './book.js';
import { check } from './check.js';
import type { Command } from './command.js';
import { gallery } from './gallery.js';
import { hold } from './hold.js';
import { newOrder } from './new.js';
import { plan } from './plan.js';

/** Every subcommand, in the order of the help text. */
export const commands: readonly Command[] = [newOrder, plan, blank, check, gallery, hold, book];
